// Looks for neutrals on a thread of its own: a tenth of a second and more that the screen must not wait.
import { expose } from 'comlink'
import { offerNeutrals } from '../analysis/candidates/neutral-offers.ts'

export type OfferWorker = typeof offerNeutrals

expose(offerNeutrals)
