import type { Grade } from './answer';

/** The sources of the printed answers, with the pages on which they stand. */
export const publishedSources = {
  'NFOS-06A': course('surface power answers', 'nfos.org/degree/opt11/answers_06a.html'),
  'NFOS-06B': course('nominal power answers', 'nfos.org/degree/opt11/answers_06b.html'),
  'NFOS-06C': course('lensmaker answers', 'nfos.org/degree/opt11/answers_06c.html'),
  'NFOS-06P': course('practice answers 6', 'nfos.org/degree/opt11/practice_answers_06.html'),
  'NFOS-08B': course('optical cross answers', 'nfos.org/degree/opt11/answers_08b.html'),
  'NFOS-08C': course('transposition answers', 'nfos.org/degree/opt11/answers_08c.html'),
  'NFOS-08P': course('practice answers 8', 'nfos.org/degree/opt11/practice_answers_08.html'),
  'NFOS-09B': course('spherical equivalent answers', 'nfos.org/degree/opt11/answers_09b.html'),
  'NFOS-10A': course('oblique meridian, practice answers', 'nfos.org/degree/opt11/practice_answers_10a.html'),
  'NFOS-11A': course('vertex powers, practice answers', 'nfos.org/degree/opt11/practice_answers_11a.html'),
  'NFOS-13A': course("Prentice's rule answers", 'nfos.org/degree/opt11/answers_13a.html'),
  'DT-13B': durham('OPH 141, image jump', 'oph141/lesson_13b.html'),
  'DT-PB-A': durham('OPH 142, prism base notation', 'oph142/NFOS-12/prism_base/module_01_a.html'),
  'DT-PB-B': durham('OPH 142, resultant prism', 'oph142/NFOS-12/prism_base/module_01_b.html'),
  'DT-09D': durham('OPH 142, vertical imbalance, unequal adds', 'oph142/NFOS-12/module_09d.html'),
  'DT-09E': durham('OPH 142, unlike segment styles', 'oph142/NFOS-12/module_09e.html'),
  'DT-TILT': durham('OPH 142, lens tilt', 'oph142/NFOS-12/lens_tilt.html'),
  'OED-BVP': page('A', 'Optical Ed problem solving, back vertex power', 'opticaled.com, November 2009'),
  'OED-OM': page('A', 'Optical Ed problem solving, oblique meridian', 'opticaled.com, November 2009'),
  'JAL-2205': page('A', 'M. Jalie, The Indian Optician, May–June 2022', 'p. 105'),
  'JAL-2209': page('A', 'M. Jalie, The Indian Optician, September–October 2022', 'p. 112'),
  'JAL-2305': page('A', 'The Indian Optician, May–June 2023', 'p. 112'),
  'JAL-2411': page('A', 'The Indian Optician, November–December 2024', 'pp. 139–140'),
  'JAL-MAT': page('A', 'M. Jalie, physical data of lens materials', 'Lens_Data page'),
  'BHO-124': page('A', 'A. K. Bhootra, Ophthalmic Lenses', 'p. 124'),
  'BHO-131': page('A', 'A. K. Bhootra, Ophthalmic Lenses', 'p. 131'),
  'BHO-134': page('A', 'A. K. Bhootra, Ophthalmic Lenses', 'p. 134'),
  IACLE: page('A', 'IACLE Contact Lens Course, Module 3, Lecture 3.3', 'Appendix B'),
  FEL: page('A', 'Felipe et al., residual astigmatism after toric intraocular lens rotation', 'abstract'),
  ATCH: page('A', 'Atchison & Tame 1993', 'doi 10.1111/j.1475-1313.1993.tb00502.x'),
  LOOMIS: page('A', 'J. Loomis, EOP 601 course notes', 'sag and edge thickness'),
  'MRC-10-3': page('A', 'mrcophth.com, mock viva 10', 'station 3'),
  'MRC-13-7': page('A', 'mrcophth.com, mock viva 13', 'station 7'),
  'MRC-IIA': page('A', 'mrcophth.com, optics', 'answers II A'),
  'STUDYLIB-P': page('A', 'Prismatic effects, lecture slides', 'studylib.net/doc/5714434'),
  CLSA: page('B', 'Contact Lens Society of America, EyeWitness, Spring 2011', 'p. 27'),
  HARI: page('B', 'OpticalCourse free dispensing course', 'quiz answers'),
  'OT-SLAB': page('B', 'opticaltraining.com, ABO, lens materials and coatings', 'page 16'),
  ABOC: page('B', 'Open course, oblique cylinder percentages', 'aboc.8m.com/12.html'),
  'OPENX-3.2': page('B', 'Open exam study guide, optics II', 'thickness, magnification, effective power'),
  '2020-FOC': page('B', '20/20 magazine, Focimetry issues', 'part one'),
} as const;

export type PublishedSource = keyof typeof publishedSources;

function page(grade: Grade, title: string, where: string) {
  return { grade, title, where };
}

function course(title: string, where: string) {
  return page('A', `National Federation of Opticianry Schools, OPT11, ${title}`, where);
}

function durham(title: string, where: string) {
  return page('A', `Durham Technical Community College, ${title}`, `courses.durhamtech.edu/opticianry/${where}`);
}
