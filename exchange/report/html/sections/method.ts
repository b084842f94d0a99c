import { markup } from '../markup';
import type { Section } from '../section';

export const method = (): Section => ({
  id: 'method',
  title: 'How the figures are made',
  body: markup`<dl>
<dt>First reading</dt><dd>The earliest final reading of an order; of lenses that are not glazed, the earliest of any stage. It is judged by itself, as if nothing had been read later. Lines below a “replaced” belong to another lens and are left out.</dd>
<dt>Rates</dt><dd>Count divided by what is counted of, with the 95 % score interval of E. B. Wilson (1927). Below 30 the sample is said to be small (common practice, no source).</dd>
<dt>Pp and Ppk</dt><dd>With each deviation as a share of its limit, mean <i>m</i> and standard deviation <i>s</i>: Pp = 1 / (3<i>s</i>), Ppk = (1 − |<i>m</i>|) / (3<i>s</i>), for sizes (1 − <i>m</i>) / (3<i>s</i>). Interval after A. F. Bissell (1990). Below 100 readings the sample is said to be small. Names as in ISO 22514-2. All from memory, texts not seen.</dd>
<dt>Bias of an instrument</dt><dd>Difference of two means with the interval for unequal spreads (B. L. Welch 1947, from memory; normal in the place of Student’s distribution).</dd>
<dt>Drift</dt><dd>Slope of the straight line of least squares through the means of the weeks, times thirty days; each week counts alike.</dd>
<dt>Repeatability</dt><dd>Standard deviation within repeats, pooled by degrees of freedom; the limit is 2.77 times that (J. M. Bland and D. G. Altman 1996; ISO 5725-6; both from memory).</dd>
<dt>Quantiles</dt><dd>Of deviations rounded to 0.005 D or Δ, 0.01 mm and 0.1°.</dd>
</dl>
`,
});
