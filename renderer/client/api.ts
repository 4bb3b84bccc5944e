import { QueryClient } from '@tanstack/react-query';
import { createTRPCClient, httpBatchLink } from '@trpc/client';
import { createTRPCOptionsProxy } from '@trpc/tanstack-react-query';
import type { Router } from '../../api/router.ts';
import { farmOfAddress } from './farm-of-address.ts';

/** What was read stays until a change; the program is on this machine, so no network is asked whether it is there. */
export const cache = new QueryClient({
  defaultOptions: {
    queries: { networkMode: 'always', retry: false, staleTime: Number.POSITIVE_INFINITY, refetchOnWindowFocus: true },
    mutations: { networkMode: 'always', retry: false },
  },
});

export const client = createTRPCClient<Router>({
  links: [
    httpBatchLink({
      url: '/trpc',
      methodOverride: 'POST',
      headers: () => {
        const farm = farmOfAddress(window.location.search);
        return farm === undefined ? {} : { 'x-bedwright-farm': farm };
      },
    }),
  ],
});

/** Every procedure of the program, typed: `useRead(api.beds.list, {})`, `useChange(api.beds.setDepth)`. */
export const api = createTRPCOptionsProxy<Router>({ client, queryClient: cache });
