// Which part lies under a place of the picture.

/** So many pixels round a tap are asked, since fingers are thick: the nearest part counts. */
const ROUND = 6;

export class Picking {
  constructor(renderer) {
    this.renderer = renderer;
    const { gl } = renderer;
    this.frame = gl.createFramebuffer();
    this.colours = gl.createRenderbuffer();
    this.depths = gl.createRenderbuffer();
    this.size = [0, 0];
  }

  fitted() {
    const { gl } = this.renderer;
    const size = [gl.drawingBufferWidth, gl.drawingBufferHeight];
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.frame);
    if (size[0] === this.size[0] && size[1] === this.size[1]) return;
    this.size = size;
    const store = (buffer, format, attachment) => {
      gl.bindRenderbuffer(gl.RENDERBUFFER, buffer);
      gl.renderbufferStorage(gl.RENDERBUFFER, format, size[0], size[1]);
      gl.framebufferRenderbuffer(gl.FRAMEBUFFER, attachment, gl.RENDERBUFFER, buffer);
    };
    store(this.colours, gl.RGBA8, gl.COLOR_ATTACHMENT0);
    store(this.depths, gl.DEPTH_COMPONENT24, gl.DEPTH_ATTACHMENT);
  }

  /** The number of the part at a place in pixels of the drawing buffer from its upper left corner; `null` for none. */
  at(camera, cut, [x, y]) {
    const { gl } = this.renderer;
    this.fitted();
    const [width, height] = this.size;
    const left = Math.max(0, Math.round(x) - ROUND);
    const low = Math.max(0, height - Math.round(y) - ROUND);
    const [wide, high] = [Math.min(2 * ROUND + 1, width - left), Math.min(2 * ROUND + 1, height - low)];
    if (wide <= 0 || high <= 0) return null;
    gl.viewport(0, 0, width, height);
    gl.enable(gl.SCISSOR_TEST);
    gl.scissor(left, low, wide, high);
    this.renderer.drawNumbers(camera, cut);
    gl.disable(gl.SCISSOR_TEST);
    const pixels = new Uint8Array(wide * high * 4);
    gl.readPixels(left, low, wide, high, gl.RGBA, gl.UNSIGNED_BYTE, pixels);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    return nearest(pixels, wide, [x - left, height - y - low]);
  }
}

/** The number nearest to a place among the pixels read. */
export function nearest(pixels, wide, [x, y]) {
  let best = null;
  for (let i = 0; i * 4 < pixels.length; i += 1) {
    const number = pixels[i * 4] + pixels[i * 4 + 1] * 256 + pixels[i * 4 + 2] * 65536;
    if (number === 0) continue;
    const far = Math.hypot((i % wide) - x, Math.floor(i / wide) - y);
    if (best === null || far < best.far) best = { far, number: number - 1 };
  }
  return best?.number ?? null;
}
