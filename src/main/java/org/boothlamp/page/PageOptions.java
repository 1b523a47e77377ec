package org.boothlamp.page;

import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.boothlamp.words.Language;
import org.boothlamp.words.Units;

/**
 * What a page is set up with. Immutable.
 *
 * @param boothId letters, digits and hyphens
 * @param language what it speaks
 * @param units of lengths
 * @param address where it listens
 * @param tokenFiles a file for each role that may sign on; empty if nobody has to, which only a
 *     loopback address may have
 * @param certificate chain in PEM, or null for no TLS
 * @param certificateKey its key in PEM, or null
 * @param booths origins of the booths of the class view, such as https://b02.school.example:8443
 * @param classViewFrom origins whose class view may look at this booth
 * @param clients how many may look live at once
 */
public record PageOptions(
    String boothId,
    Language language,
    Units units,
    InetSocketAddress address,
    Map<Role, Path> tokenFiles,
    Path certificate,
    Path certificateKey,
    List<String> booths,
    List<String> classViewFrom,
    int clients) {

  public PageOptions {
    tokenFiles = Map.copyOf(tokenFiles);
    booths = List.copyOf(booths);
    classViewFrom = List.copyOf(classViewFrom);
    if (tokenFiles.isEmpty() && !address.getAddress().isLoopbackAddress()) {
      throw new IllegalArgumentException("open to others without a token: " + address);
    }
  }

  /** True if it speaks HTTPS. */
  boolean isSecure() {
    return certificate != null;
  }
}
