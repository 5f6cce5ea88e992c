import { useEffect, useMemo, useState } from 'react';
import { mostShade, type FacePicture } from '../../core/mesh/facePictures';
import type { Vec3 } from '../../core/mesh/types';
import type { PartInputs } from '../../steps/inputs/part';
import { Button } from '../../ui/Button';
import type { MeasuringDesk } from '../measuring/measuringDesk';
import './rightWayUp.css';

export interface RightWayUpQuestionProps {
  readonly part: PartInputs;
  readonly hasPattern: boolean;
  readonly desk: Pick<MeasuringDesk, 'ask'>;
  readonly disabled: boolean;
  readonly onPull: (pull: Vec3) => void;
}

/** Asked where the shape does not tell: two pictures of the part, and the one that people see is pressed. */
export function RightWayUpQuestion(props: RightWayUpQuestionProps) {
  const { part, hasPattern } = props;
  if (!hasPattern || part.rightWayUp !== 'asked') return null;
  // Another reading of the file has other pictures.
  return <TwoPictures key={[part.unit, part.body, part.scale].join(' ')} {...props} />;
}

function TwoPictures({ desk, disabled, onPull }: RightWayUpQuestionProps) {
  const [pictures, setPictures] = useState<readonly FacePicture[] | null>(null);
  useEffect(() => {
    let wanted = true;
    void desk.ask('face pictures', null).then((drawn) => {
      if (wanted) setPictures(drawn);
    });
    return () => {
      wanted = false;
    };
  }, [desk]);
  return (
    <section aria-label="Right way up" className="right-way-up">
      <h2>Which is the face people see?</h2>
      <p className="quiet">
        The shape does not tell. Everything after Part waits for this. If it is neither, give the pull at
        Part.
      </p>
      <div className="face-choices">
        {(pictures ?? []).map((picture, at) => (
          <Button
            key={picture.pull.join(' ')}
            className="face-choice"
            disabled={disabled}
            aria-label={at === 0 ? 'This one, the first picture' : 'The other side, the second picture'}
            onClick={() => onPull(picture.pull)}
          >
            <ShadedPicture picture={picture} />
            {at === 0 ? 'This one' : 'The other side'}
          </Button>
        ))}
        {pictures === null ? <p role="status">The two pictures are being drawn.</p> : null}
      </div>
    </section>
  );
}

/** One path for each shade: dark where the surface turns away or lies deep. */
function ShadedPicture({ picture }: { readonly picture: FacePicture }) {
  const { width } = picture;
  const paths = useMemo(() => runsOf(picture), [picture]);
  return (
    <svg viewBox={`0 0 ${width} ${width}`} aria-hidden shapeRendering="crispEdges">
      {paths.map((path, shade) =>
        path === '' ? null : (
          <path
            key={shade}
            d={path}
            fill="var(--ink)"
            fillOpacity={0.92 - (0.84 * shade) / (mostShade - 1)}
          />
        ),
      )}
    </svg>
  );
}

/** Of each shade, its runs along the rows; the picture counts rows from below. */
function runsOf({ width, shade }: FacePicture): readonly string[] {
  const paths = Array.from({ length: mostShade }, () => '');
  for (let row = 0; row < width; row++) {
    for (let from = 0; from < width;) {
      const own = shade[row * width + from]!;
      let to = from + 1;
      while (to < width && shade[row * width + to] === own) to++;
      if (own > 0) paths[own - 1] += `M${from} ${width - row - 1}h${to - from}v1h${from - to}z`;
      from = to;
    }
  }
  return paths;
}
