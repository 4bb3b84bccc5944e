import type { inferRouterOutputs } from '@trpc/server';
import type { Router } from '../../../../api/router.ts';

type Outputs = inferRouterOutputs<Router>['proposals'];

export type Overview = Outputs['overview'];
export type ProposalView = Outputs['view'];
export type Move = ProposalView['moves'][number];
export type Figures = Outputs['present'];
export type FigureRow = Overview['crops'][number];
export type OwnFigures = Overview['own'];
