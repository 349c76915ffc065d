// Suggested neutrals beside the averages of the whole frame that are commonly used, on fresh simulated scenes.
import { benchRow, type BenchRows } from '../../src/commands/bench-row.ts'
import { filters, spectraAreHere } from '../simulation/camera.ts'
import { firstFreshSeed, summarise, summariseMemory, tryUntilSoluble } from '../simulation/suggestion-trial.ts'

export const rows: BenchRows = async function* () {
  if (!spectraAreHere) return
  const trials = [...tryUntilSoluble(firstFreshSeed, true)]
  const groups = [
    ...filters.map((nm) => [`${nm} nm`, trials.filter(({ filterNm }) => filterNm === nm)] as const),
    ...filters.map(
      (nm) =>
        [
          `${nm} nm in open shade`,
          trials.filter(({ filterNm, kind }) => filterNm === nm && kind === 'open shade'),
        ] as const,
    ),
  ]
  for (const [name, group] of groups) {
    const { soluble, top1, top3, first, greyWorld, greyWorldSolves, shadesOfGrey } = summarise(group)
    const title = `neutral ${name}, ${soluble} scenes`
    yield benchRow(`${title}: first within .05 stop against grey world`, 100 * top1, '%', 100 * greyWorldSolves)
    yield benchRow(`${title}: one of three within .05 stop against grey world`, 100 * top3, '%', 100 * greyWorldSolves)
    yield benchRow(`${title}: mean error of the first against grey world`, first, 'stop', greyWorld)
    yield benchRow(`${title}: mean error of the first against shades of grey`, first, 'stop', shadesOfGrey)
  }
  for (const nm of filters) {
    const remembered = summariseMemory(trials.filter(({ filterNm }) => filterNm === nm))
    const title = `neutral ${nm} nm, ${remembered.scenes} scenes with a grey remembered from another`
    yield benchRow(`${title}: mean error of the first against without`, remembered.with, 'stop', remembered.without)
    const [solvedWith, solvedWithout] = [100 * remembered.solvedWith, 100 * remembered.solvedWithout]
    yield benchRow(`${title}: first within .05 stop against without`, solvedWith, '%', solvedWithout)
  }
  const leafy = trials.filter(({ foliage }) => foliage > 0.02)
  const bare = trials.filter(({ foliage }) => foliage === 0)
  for (const nm of filters) {
    const offered = (group: typeof trials) => {
      const here = group.filter(({ filterNm }) => filterNm === nm)
      return (100 * here.filter(({ offersFoliage }) => offersFoliage).length) / Math.max(here.length, 1)
    }
    yield benchRow(`foliage ${nm} nm: offered where it is, against where none is`, offered(leafy), '%', offered(bare))
  }
}
