/** Figures that others have published, for context only; each as its source gives it. */

export interface PublishedFigure {
  readonly what: string;
  readonly sample: string;
  readonly result: string;
  readonly source: string;
  readonly address: string;
}

export const PUBLISHED: readonly PublishedFigure[] = [
  {
    what: 'Spectacles ordered online, USA 2011',
    sample: '200 ordered, 154 received',
    result: '29 % had a lens off the prescription, 44.8 % failed something',
    source: 'Account of Optometry 82:549',
    address: 'https://mivision.com.au/2012/03/university-study-fails-spectacles-bought-online/',
  },
  {
    what: 'Spectacles ordered online, USA 2021, by ANSI Z80.1-2015',
    sample: '300 orders from 3 vendors',
    result: 'failures 11.2 ± 3.2, 8.0 ± 2.7 and 8.2 ± 2.8 %',
    source: 'Account of DOI 10.1097/OPX.0000000000001817',
    address: 'https://www.reviewofoptometry.com/article/online-vendors-getting-better-at-spectacle-rx-results',
  },
  {
    what: 'Spectacles from shops, Pakistan 2023, against a trusted refraction, so that errors of refraction are included',
    sample: '266 pairs',
    result: 'within limits: sphere 79.7, cylinder 98.5, horizontal prism 60.5, vertical prism 100, all 44.4 %',
    source: 'PMC10603428, table 2',
    address: 'https://pmc.ncbi.nlm.nih.gov/articles/PMC10603428/table/T2',
  },
  {
    what: 'Spectacles from shops, Cambodia 2022',
    sample: '496 pairs from 156 shops',
    result:
      '35.1 % optimal; horizontal prism the commonest fault; 18.3 % of written prescriptions did not match the spectacles',
    source: 'medRxiv 2023.06.11.23291172',
    address: 'https://medrxiv.org/content/10.1101/2023.06.11.23291172v1.full-text',
  },
  {
    what: 'Spectacles returned as not tolerated, one practice, UK 2010',
    sample: '62 of 3091',
    result: '1.8 %; of these prescription 61.0, dispensing 22.0, data entry 6.8 %',
    source: 'PubMed 19663923',
    address: 'https://pubmed.ncbi.nlm.nih.gov/19663923/',
  },
  {
    what: 'Errors of offices that make a laboratory call back, 1992',
    sample: 'telephone survey of laboratories',
    result: 'adds 30.5, PD missing 23.3, cylinder axis 11, sign of a power 11, frame data 9, tint 5.3 %',
    source: 'Pacific University, thesis',
    address: 'https://commons.pacificu.edu/work/sc/46c6c610-783a-4ace-b9be-4ffa0a965274',
  },
  {
    what: 'How sure a prescription itself is',
    sample: '40 optometrists, one eye',
    result: 'standard deviation of the sphere 0.28 D, 95 % limit of reproducibility 0.78 D',
    source: 'Catalogue entry of the study',
    address: 'https://www.mendeley.com/catalogue/cfd6138d-eec3-3604-8544-ca82d10a077e/',
  },
];
