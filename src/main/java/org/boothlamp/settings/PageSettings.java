package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.List;

/**
 * The local web page. Immutable.
 *
 * @param address IP address it listens at
 * @param port 1 to 65535, or 0 for any free one
 * @param traineeToken file with the token of the role, or null
 * @param instructorToken likewise
 * @param technicianToken likewise
 * @param certificate chain in PEM, or null for no TLS
 * @param certificateKey its key in PEM, or null
 * @param booths origins of the booths of the class view
 * @param classViewFrom origins whose class view may look at this booth
 * @param clients how many may look live at once
 */
public record PageSettings(
    String address,
    int port,
    Path traineeToken,
    Path instructorToken,
    Path technicianToken,
    Path certificate,
    Path certificateKey,
    List<String> booths,
    List<String> classViewFrom,
    int clients) {

  public PageSettings {
    booths = List.copyOf(booths);
    classViewFrom = List.copyOf(classViewFrom);
  }

  /** True if somebody has to show a token. */
  public boolean hasTokens() {
    return traineeToken != null || instructorToken != null || technicianToken != null;
  }

  /** True if only this computer itself can reach it. */
  public boolean isLoopback() {
    return address.startsWith("127.") || address.equals("::1");
  }
}
