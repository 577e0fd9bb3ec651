// The picture as an element of a page: the server gives it what to show, and hears what was done in it.
import { Picture } from "/static/space/picture.js";

export default {
  template: `
    <div class="fp-space-box">
      <canvas class="fp-space-canvas" tabindex="0" role="img" :aria-label="label"></canvas>
      <div class="fp-space-words" aria-hidden="true"></div>
      <div class="fp-space-scale" aria-hidden="true"></div>
    </div>`,
  props: { label: String, scene: String, pose: String, chosen: String, handles: Array, mark: Number, unit: Object, single: Boolean, at: String },
  mounted() {
    const [canvas, holder, bar] = this.$el.children;
    try {
      this.picture = new Picture(canvas, holder, bar, (name, what) => this.$emit(name, what));
    } catch {
      this.$emit("without");
      return;
    }
    this.$watch(() => [this.scene, this.pose, this.chosen, JSON.stringify(this.handles), JSON.stringify(this.unit)], () => this.show());
    this.$watch(() => this.single, (single) => { this.picture.single = single; });
    this.show();
  },
  beforeUnmount() { this.picture?.stop(); },
  methods: {
    show() {
      if (!this.picture || !this.scene || !this.pose) return;
      if (this.read !== this.scene) [this.read, this.data] = [this.scene, JSON.parse(this.scene)];
      this.picture.show({
        data: this.data, pose: JSON.parse(this.pose), chosen: this.chosen ?? "", handles: this.handles ?? [], mark: this.mark, unit: this.unit,
      });
      this.picture.single = this.single;
      this.picture.began(this.at);
    },
    look(name) { this.picture?.all(name); },
    nearer(times) { this.picture?.looking.nearer(times); },
    centre(key) { this.picture?.centre(key); },
    ahead(key, to) { this.picture?.ahead(key, to); },
    settle() { this.picture?.build(); },
  },
};
