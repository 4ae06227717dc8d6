/** The colour a custom property stands for on an element, as a text that canvases and the scene understand. */
export const colourOf = (element: Element, property: string): string => coloursOf(element, [property])[0];

/** The same of several: they are asked for together, so that the window works out its styles once. */
export function coloursOf(element: Element, properties: readonly string[]): string[] {
  const probes = properties.map((property) => {
    const probe = document.createElement('i');
    probe.style.color = `var(${property})`;
    // Where the system forces its colours, each would be read as that of its text: pictures keep their own.
    probe.style.setProperty('forced-color-adjust', 'none');
    return probe;
  });
  (element.shadowRoot ?? element).append(...probes);
  const colours = probes.map((probe) => getComputedStyle(probe).color);
  for (const probe of probes) probe.remove();
  return colours;
}
