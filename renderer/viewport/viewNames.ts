import type { AxleName } from '../../geometry/index';
import type { OverlayName, Scope, ViewName } from '../state/viewing';

/** The named views as their buttons have them. */
export const viewsFor = (axle: AxleName, scope: Scope): readonly { readonly name: ViewName; readonly label: string }[] => [
  { name: 'corner', label: 'Corner' },
  { name: 'front', label: axle === 'rear' || scope === 'axle' || scope === 'car' ? 'Behind' : 'Front' },
  { name: 'side', label: 'Side' },
  { name: 'top', label: 'Top' },
  { name: 'wheel', label: 'Wheel' },
  { name: 'axis', label: 'Axis' },
];

export const SCOPES: readonly { readonly name: Scope; readonly label: string }[] = [
  { name: 'left', label: 'Left' },
  { name: 'right', label: 'Right' },
  { name: 'axle', label: 'Axle' },
  { name: 'car', label: 'Car' },
];

export const OVERLAYS: readonly { readonly name: OverlayName; readonly label: string }[] = [
  { name: 'ghost', label: 'Compared setup, dotted' },
  { name: 'steeringAxis', label: 'Steering axis, trail and scrub' },
  { name: 'instantCentres', label: 'Instant centres and their lines' },
  { name: 'rollCentre', label: 'Roll centre; axis of the whole car' },
  { name: 'path', label: 'Path of the chosen point over bump' },
  { name: 'pointNames', label: 'Names of all points' },
  { name: 'envelope', label: 'Wheel over all travel and lock' },
  { name: 'jointTilt', label: 'Tilt of joints, with what is rated' },
];
