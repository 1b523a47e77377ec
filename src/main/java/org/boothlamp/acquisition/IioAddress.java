package org.boothlamp.acquisition;

import java.nio.file.Path;

/**
 * A converter that the kernel drives as an industrial-I/O device. Immutable.
 *
 * @param root folder that holds {@code sys} and {@code dev}, mostly {@code /}
 * @param name name of the device, as in its file {@code name}
 * @param trigger name of the trigger that starts its conversions; empty if the device has its own
 *     or somebody else has set one
 */
public record IioAddress(Path root, String name, String trigger) {

  /** Folder of devices and triggers. */
  Path devices() {
    return root.resolve("sys/bus/iio/devices");
  }
}
