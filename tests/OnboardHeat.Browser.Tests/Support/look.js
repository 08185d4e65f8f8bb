/* What a reader of the page meets: every text that is seen, with its size, contrast and whether it flashes. Handed to the page by tests.
   Relative luminance and contrast as WCAG 2.2 defines them (success criterion 1.4.3 and its definitions). */
(() => {
  const channel = (v) => v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4;
  const luminance = ([r, g, b]) => 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
  const parse = (color) => color.match(/[\d.]+/g).map(Number);
  const contrast = (a, b) => {
    const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
    return (high + 0.05) / (low + 0.05);
  };
  const groundOf = (element) => {
    for (let e = element; e; e = e.parentElement) {
      const color = parse(getComputedStyle(e).backgroundColor);
      if (color.length < 4 || color[3] === 1) return color;
    }
    return [255, 255, 255];
  };
  const context = document.createElement('canvas').getContext('2d');
  const capital = (style) => {
    context.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    return context.measureText('H').actualBoundingBoxAscent;
  };
  const isSeen = (element) => element.checkVisibility() && !element.closest('.aside') && element.getBoundingClientRect().width > 0;

  window.look = {
    contrast,
    texts() {
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      const found = [];
      while (walker.nextNode()) {
        const text = walker.currentNode.textContent.trim();
        const element = walker.currentNode.parentElement;
        if (!text || !isSeen(element)) continue;
        const style = getComputedStyle(element);
        found.push({
          text, capitalPx: capital(style), contrast: contrast(parse(style.color), groundOf(element)),
          isFine: element.closest('.fine, .mark, footer') !== null,
        });
      }
      return found;
    },
    marks() {
      return [...document.querySelectorAll('.layers span, button')].filter(isSeen).map((element) => {
        const style = getComputedStyle(element);
        const around = groundOf(element.parentElement);
        // A button is told from what is around it by its ground or by its border.
        const colours = element.tagName === 'SPAN' ? [style.backgroundColor] : [style.backgroundColor, style.borderTopColor];
        return { text: element.textContent || 'layer',
          contrast: Math.max(...colours.map(parse).filter((c) => c.length < 4 || c[3] === 1).map((c) => contrast(c, around))) };
      });
    },
    flashing: () => [...document.querySelectorAll('*')].filter((e) => isSeen(e) && getComputedStyle(e).animationName !== 'none')
      .map((e) => e.closest('[data-owed]') ? 'owed' : e.textContent),
  };
})();
