import { useEffect, useRef } from 'react';
import { BendPage } from './bend/BendPage.js';
import { BoardPage } from './board/BoardPage.js';
import { Boundary } from './Boundary.js';
import { AskFitPage } from './fit/AskFitPage.js';
import { FitPage } from './fit/FitPage.js';
import { DayPage } from './handout/DayPage.js';
import { ReportPage } from './handout/ReportPage.js';
import { PartPage } from './part/PartPage.js';
import { PartsPage } from './partsList/PartsPage.js';
import { PiecesPage } from './pieces/PiecesPage.js';
import { type Route, routeOf, to, useHash } from './place.js';
import { ProfilePage } from './profile/ProfilePage.js';
import { Sheet } from './sheet/Sheet.js';
import { ConditionPage } from './shop/ConditionPage.js';
import { DeductionsPage } from './shop/DeductionsPage.js';
import { OwnMetalsPage } from './shop/OwnMetalsPage.js';
import { FloorPage } from './shop/FloorPage.js';
import { MachinePage } from './shop/MachinePage.js';
import { RackPage } from './shop/RackPage.js';
import { RacksPage } from './shop/RacksPage.js';
import { ToolPage } from './shop/ToolPage.js';
import { TrialPage } from './trial/TrialPage.js';
import { WalkPage } from './walk/WalkPage.js';

const Page = ({ route }: { readonly route: Route }) => {
  switch (route.page) {
    case 'parts':
      return <PartsPage />;
    case 'profile':
      return <ProfilePage />;
    case 'part':
      return <PartPage key={route.id} id={route.id} />;
    case 'board':
      return <BoardPage key={route.partId} partId={route.partId} />;
    case 'trial':
      return <TrialPage key={route.id} id={route.id} />;
    case 'walk':
      return <WalkPage key={route.id} id={route.id} number={route.step} />;
    case 'fits':
      return <AskFitPage />;
    case 'fit':
      return <FitPage key={route.id} id={route.id} />;
    case 'bend':
      return <BendPage />;
    case 'floor':
      return <FloorPage />;
    case 'machine':
      return <MachinePage key={route.id} id={route.id} />;
    case 'condition':
      return <ConditionPage key={route.id} id={route.id} />;
    case 'deductions':
      return <DeductionsPage />;
    case 'metals':
      return <OwnMetalsPage />;
    case 'racks':
      return <RacksPage />;
    case 'rack':
      return <RackPage key={route.id} id={route.id} />;
    case 'tool':
      return <ToolPage key={`${route.rack} ${route.id}`} rackId={route.rack} id={route.id} />;
    case 'report':
      return <ReportPage key={route.id} id={route.id} />;
    case 'day':
      return <DayPage key={route.trials.join()} trials={route.trials} />;
    case 'pieces':
      return <PiecesPage key={route.id} id={route.id} />;
    case 'nowhere':
      return (
        <Sheet title="No such sheet" trail={[]} block={[['Address', route.address]]}>
          <div className="body"><p>There is no sheet at this address. <a href={to.parts}>Go to the parts.</a></p></div>
        </Sheet>
      );
  }
};

/** The page that the address names; one that breaks off says so in its place. */
export const Pages = () => {
  const hash = useHash();
  const first = useRef(true);
  const route = routeOf(hash);
  const room = JSON.stringify(route.page === 'walk' ? { ...route, step: 1 } : route);
  useEffect(() => {
    // A new sheet is read from its top; steps of one walk stay where the eye is.
    if (!first.current) {
      scrollTo(0, 0);
      document.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
    }
    first.current = false;
  }, [room]);
  return <Boundary key={room} place={hash}><Page route={route} /></Boundary>;
};
