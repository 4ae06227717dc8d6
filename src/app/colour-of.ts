/** The colour a custom property stands for on an element, as a text that canvases and the scene understand. */
export function colourOf(element: Element, property: string): string {
  const probe = document.createElement('i');
  probe.style.color = `var(${property})`;
  (element.shadowRoot ?? element).append(probe);
  const colour = getComputedStyle(probe).color;
  probe.remove();
  return colour;
}
