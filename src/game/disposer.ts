/** Everything that has to be taken down, in one place, in the reverse order of putting up. */
export class Disposer {
  private readonly tasks: (() => void)[] = [];

  add(task: () => void): void {
    this.tasks.push(task);
  }

  listen<K extends keyof HTMLElementEventMap>(
    target: HTMLElement,
    type: K,
    handler: (event: HTMLElementEventMap[K]) => void,
    options?: AddEventListenerOptions,
  ): void {
    target.addEventListener(type, handler, options);
    this.add(() => target.removeEventListener(type, handler, options));
  }

  flush(): void {
    for (let task = this.tasks.pop(); task; task = this.tasks.pop()) task();
  }
}
