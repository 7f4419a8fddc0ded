import { Elevation } from '../../shared/drawing/elevation.tsx';

/** An invented wall with one hold-down that does not hold: what this tool is about, in one drawing. */
export function GateDrawing() {
  return (
    <Elevation
      labels="none"
      maxHeightPx={560}
      place={{
        kind: 'wall',
        name: 'Underlath',
        widthIn: 180,
        heightIn: 108,
        framingSpacingIn: 16,
        memberDepthIn: 3.5,
        openings: [{ name: 'window', xIn: 92, yIn: 36, widthIn: 36, heightIn: 48 }],
      }}
      findings={[
        {
          id: 'hold-down',
          number: 1,
          title: '',
          severity: 'engineer',
          extent: { xIn: 1, yIn: 0, widthIn: 9, heightIn: 16 },
        },
        {
          id: 'sill',
          number: 2,
          title: '',
          severity: 'repair',
          extent: { xIn: 140, yIn: 0, widthIn: 26, heightIn: 9 },
        },
      ]}
    />
  );
}
