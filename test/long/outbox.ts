/** The model of the outbox in full: ten thousand lives of a device. */
export const OUTBOX_STEP = {
  name: 'outbox, whatever befalls the device',
  runs: 10_000,
  files: ['test/capture/outbox/outbox-model.test.ts'],
}
