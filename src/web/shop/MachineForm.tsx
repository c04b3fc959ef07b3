import type { Machine } from '../../shop/index.js';
import { AxisField, ChoiceField, KnownField, NumberField, SeveralField, TextField, YesNoField } from './fields.js';
import { FacesField } from './FacesField.js';
import { OptionsField } from './OptionsField.js';
import { SectionField } from './SectionField.js';

const LETTERS = [...'ABCDEFGH'];

const WhatItIs = ({ isNew }: { readonly isNew: boolean }) => (
  <section className="grid-fields" aria-label="What it is">
    {isNew && <TextField path="id" label="Short id" />}<TextField path="name" label="Name" />
    <ChoiceField path="condition" label="Taken in" choices={['new', 'reconditioned']} /><YesNoField path="demo" label="Invented, for demonstration" />
    <TextField path="summary" label="One sentence for a buyer" wide />
  </section>
);

const ForceAndSizes = () => (
  <>
    <h2>Force and sizes</h2>
    <section className="grid-fields" aria-label="Force and sizes">
      <NumberField path="rating" label="Rating, kN" per={1000} /><NumberField path="ratingPerLength" label="Rating per length, N/mm" /><NumberField path="length" label="Bed that takes tools, mm" />
      <NumberField path="betweenFrames" label="Between side frames, mm" /><NumberField path="throat" label="Throat, mm" /><NumberField path="openHeight" label="Open height, mm" />
      <NumberField path="shutHeight" label="Shut height, mm" /><NumberField path="bedHeight" label="Die seat over floor, mm" /><NumberField path="cylinders.spacing" label="Between cylinders, mm" />
      <ChoiceField path="cylinders.synchronisation" label="Ends of the ram kept level" choices={['electronic', 'torsion bar']} /><ChoiceField path="crowning" label="Crowning" choices={['powered', 'by hand', 'none']} />
      <NumberField path="speeds.approach" label="Approach, mm/s" /><NumberField path="speeds.bend" label="Bending, mm/s" /><NumberField path="speeds.return" label="Return, mm/s" /><NumberField path="changePoint" label="Speed changes over the sheet at, mm" /><NumberField path="stationSeconds" label="Time to build a station, s (may stay out)" mayStayOut />
    </section>
  </>
);

const BackGauge = () => (
  <>
    <h2>Back gauge</h2>
    <section className="grid-fields" aria-label="Back gauge">
      <AxisField path="gauge.x" label="X, back from the bending plane" /><AxisField path="gauge.r" label="R, up from the die seat" /><AxisField path="gauge.z" label="Z, along the bed" />
      <NumberField path="gauge.fingers" label="Fingers" /><NumberField path="gauge.finger.width" label="Width of a finger, mm" /><NumberField path="gauge.apart" label="Least distance of two, mm" /><NumberField path="gauge.ownX.most" label="Fingers apart in X by at most, mm (may stay out)" mayStayOut />
    </section>
  </>
);

const Repeatability = () => (
  <>
    <h2>Repeatability, as new or as measured</h2>
    <section className="grid-fields" aria-label="Repeatability">
      <KnownField path="repeatability.ram" label="Ram" /><KnownField path="repeatability.x" label="X" /><KnownField path="repeatability.r" label="R" />
      <KnownField path="gauge.play" label="Play of a finger" optional /><KnownField path="gauge.squareness" label="Squareness, over 1,000 mm" optional />
    </section>
    <p className="small soft">Of a machine taken in used, the condition record replaces these figures; what it does not hold is not known.</p>
  </>
);

/** `drawn`: the machine as it was last right. */
const CrossSections = ({ drawn }: { readonly drawn: Machine | undefined }) => (
  <>
    <h2>Cross-sections</h2>
    <section className="grid-fields" aria-label="Cross-sections">
      <SectionField path="beam.0" label="Beam of the ram, from the punch's shoulder seat" shapes={['beam', 'rectangle']} of="machine" drawn={drawn?.beam[0]} />
      <SectionField path="clamp.0" label="Clamp row, from the punch's shoulder seat" shapes={['clamp', 'rectangle']} of="machine" drawn={drawn?.clamp[0]} />
      <SectionField path="bed.0" label="Bed, from the die seat" shapes={['bed', 'rectangle']} of="machine" drawn={drawn?.bed[0]} />
      <SectionField path="gauge.finger.profile" label="Finger, from X and R" shapes={['finger', 'rectangle']} of="machine" drawn={drawn?.gauge.finger.profile} />
      <SectionField path="gauge.beam" label="Gauge beam, from X and R" shapes={['rectangle']} of="machine" drawn={drawn?.gauge.beam} />
    </section>
  </>
);

const WhatItHolds = () => (
  <>
    <h2>What it holds</h2>
    <SeveralField path="clampFamilies" label="Punch tangs" choices={LETTERS.map((l) => `tang ${l}`)} /><SeveralField path="seatFamilies" label="Die seats" choices={LETTERS.map((l) => `seat ${l}`)} />
  </>
);

const PriceAndSite = () => (
  <>
    <h2>Price and site</h2>
    <section className="grid-fields" aria-label="Price and site">
      <NumberField path="price" label="Price" /><TextField path="currency" label="Currency" /><NumberField path="site.mass" label="Mass, kg" /><NumberField path="site.footprint.0" label="Footprint wide, mm" />
      <NumberField path="site.footprint.1" label="Footprint deep, mm" /><NumberField path="site.height" label="Height, mm" /><TextField path="site.supply" label="Supply" />
    </section>
  </>
);

interface MachineFormProps {
  /** Not kept yet: its id may still be chosen. */
  readonly isNew: boolean;
  /** The machine as it was last right. */
  readonly drawn: Machine | undefined;
}

/** The fields of a machine's data, by what they are about; inside a DataForm. */
export const MachineForm = ({ isNew, drawn }: MachineFormProps) => (
  <>
    <WhatItIs isNew={isNew} />
    <ForceAndSizes />
    <BackGauge />
    <Repeatability />
    <CrossSections drawn={drawn} />
    <FacesField />
    <WhatItHolds />
    <h2>Options to be had with it</h2>
    <OptionsField />
    <PriceAndSite />
  </>
);
