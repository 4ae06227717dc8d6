import { css } from 'lit';

/** How a sheet looks that is laid over the bench. */
export const SHEET_VIEW_STYLE = css`
  :host {
    display: grid;
    grid-template-rows: auto minmax(0, 1fr) auto auto auto;
    gap: var(--s2);
    padding: var(--s4);
    background: var(--bench-ground);
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--s3);
    align-items: baseline;
  }
  .head b {
    font-size: var(--t-large);
  }
  .table {
    position: relative;
    min-block-size: 0;
  }
  /* Its own proportions must not stretch the room it is given. */
  svg {
    position: absolute;
    inset: 0;
    inline-size: 100%;
    block-size: 100%;
    overflow: clip;
    touch-action: none;
  }
  .sheet {
    fill: var(--foam);
  }
  .clear {
    fill: var(--bench-ground);
    fill-opacity: 0.8;
  }
  .border {
    fill: none;
    stroke: var(--on-foam);
    stroke-width: 1px;
    stroke-dasharray: 2 5;
    opacity: 0.6;
    vector-effect: non-scaling-stroke;
  }
  .beyond {
    fill: var(--bench-ground);
  }
  .break {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1px;
    vector-effect: non-scaling-stroke;
  }
  g.piece {
    cursor: grab;
  }
  g.piece:focus,
  g.piece:focus-visible {
    outline: 0;
  }
  .body {
    fill: color-mix(in srgb, var(--foam-cut) 70%, #ffffff);
    stroke: #111;
    stroke-width: 1px;
    vector-effect: non-scaling-stroke;
  }
  .bevel {
    fill: none;
    stroke: #111;
    stroke-width: 1px;
    opacity: 0.5;
    vector-effect: non-scaling-stroke;
  }
  .is-held .body {
    stroke-width: 2.5px;
  }
  .in-hand .body {
    fill: var(--lamp);
  }
  .in-hand text {
    stroke: var(--lamp);
  }
  g.piece:focus-visible .body {
    stroke: var(--on-foam);
    stroke-width: 3px;
  }
  .is-waiting .body {
    fill-opacity: 0.6;
    stroke-dasharray: 4 3;
  }
  .is-over .body {
    fill: url(#hatch);
    stroke: var(--wrong);
    stroke-width: 3px;
    stroke-dasharray: 8 4;
  }
  .hatch-ground {
    fill: var(--paper-high);
  }
  .hatch-line {
    fill: var(--wrong);
  }
  text {
    fill: #111;
    font-family: var(--type);
    font-weight: 700;
    paint-order: stroke;
    stroke: color-mix(in srgb, var(--foam-cut) 70%, #ffffff);
    stroke-width: 0.18em;
    pointer-events: none;
    user-select: none;
  }
  text.held {
    font-weight: 500;
  }
  .ghost path {
    fill: none;
    stroke: var(--on-foam);
    stroke-width: 2px;
    stroke-dasharray: 5 4;
    vector-effect: non-scaling-stroke;
  }
  .handle {
    cursor: grab;
  }
  .stalk {
    stroke: var(--on-foam);
    stroke-width: 2px;
    vector-effect: non-scaling-stroke;
    fill: none;
    pointer-events: none;
  }
  .rim,
  .knob {
    fill: none;
    stroke-linecap: round;
    vector-effect: non-scaling-stroke;
  }
  .rim {
    stroke: #111;
    stroke-width: 22px;
  }
  .knob {
    stroke: var(--lamp);
    stroke-width: 17px;
  }
  .said {
    min-block-size: 1.4em;
    text-align: center;
    font-size: var(--t-small);
  }
  .turn {
    display: flex;
    flex-wrap: wrap;
    justify-content: center;
    align-items: center;
    gap: var(--s2) var(--s3);
  }
`;
