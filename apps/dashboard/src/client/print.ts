/** Opens everything that can be opened while the page prints, so that the paper carries the whole letter. */
export function printWhole(): void {
  let opened: HTMLDetailsElement[] = [];
  window.addEventListener('beforeprint', () => {
    opened = [...document.querySelectorAll('details')].filter((details) => !details.open);
    for (const details of opened) details.open = true;
  });
  window.addEventListener('afterprint', () => {
    for (const details of opened) details.open = false;
    opened = [];
  });
}
