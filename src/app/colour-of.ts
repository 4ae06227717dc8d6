/** The colour a custom property stands for on an element, as a text that canvases and the scene understand. */
export function colourOf(element: Element, property: string): string {
  const probe = document.createElement('i');
  probe.style.color = `var(${property})`;
  // Where the system forces its colours, each would be read as that of its text: pictures keep their own.
  probe.style.setProperty('forced-color-adjust', 'none');
  (element.shadowRoot ?? element).append(probe);
  const colour = getComputedStyle(probe).color;
  probe.remove();
  return colour;
}
