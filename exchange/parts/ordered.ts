/** An order as single facts. */
import type { Block, Eye, Order, Place, Placed } from '../../orders';
import { EYES } from '../../orders/model';
import { figurePart, prismParts } from './make-part';
import type { Part, PartCode } from './part';

/** Everything in an order that is a figure of the pair or of a lens to be worn. */
export function orderedParts(order: Order, block: Block): readonly Part[] {
  const parts: Part[] = [];
  const put = (code: PartCode, eye: Eye | null, value: number, place: Place): void => {
    parts.push(figurePart(block, code, eye, value, place));
  };
  const placed = (code: PartCode, eye: Eye | null, figure: Placed<number> | null): void => {
    if (figure) put(code, eye, figure.value, figure.place);
  };
  for (const eye of EYES) {
    const lens = order.lenses[eye];
    if (lens.written) {
      const { value, place } = lens.written;
      put('sphere', eye, value.sphere, place);
      if (value.cylinder !== 0) {
        put('cylinder', eye, value.cylinder, place);
        put('axis', eye, value.axis, place);
      }
    }
    placed('add', eye, lens.add);
    placed('intermediate', eye, lens.intermediate);
    if (lens.prism) parts.push(...prismParts(block, eye, lens.prism.value, lens.prism.place));
    placed('pd', eye, order.pd[eye]);
    placed('near-pd', eye, order.nearPd[eye]);
    placed('height', eye, lens.height);
    placed('base-curve', eye, lens.baseCurve);
    placed('centre-thickness', eye, lens.thickness.centre);
    placed('edge-thickness', eye, lens.thickness.edge);
    placed('min-thickness', eye, lens.thickness.min);
  }
  placed('pd', null, order.pd.binocular);
  placed('near-pd', null, order.nearPd.binocular);
  placed('frame-a', null, order.frame.a);
  placed('frame-b', null, order.frame.b);
  placed('frame-dbl', null, order.frame.dbl);
  placed('frame-ed', null, order.frame.ed);
  placed('vertex', null, order.asWorn.vertex);
  placed('panto', null, order.asWorn.panto);
  placed('wrap', null, order.asWorn.wrap);
  return parts;
}
