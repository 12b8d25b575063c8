export { shareGround } from './share-ground.js';
export {
  type CropGround,
  GROUND_MEASURES,
  type Ground,
  type GroundCrop,
  type GroundMeasure,
  type GroundPlan,
  type Reckoned,
  type ShareOptions,
} from './types.js';
export { explainCropGround, explainGround } from './working.js';
