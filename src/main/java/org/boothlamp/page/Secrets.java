package org.boothlamp.page;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** Keyed digests (HMAC-SHA-256, RFC 2104) and comparisons that take the same time either way. */
final class Secrets {

  private static final String HMAC = "HmacSHA256";

  private Secrets() {}

  static String digest(byte[] key, String text) {
    try {
      Mac mac = Mac.getInstance(HMAC);
      mac.init(new SecretKeySpec(key, HMAC));
      return HexFormat.of().formatHex(mac.doFinal(bytes(text)));
    } catch (GeneralSecurityException missing) {
      throw new IllegalStateException("every Java has " + HMAC, missing);
    }
  }

  /** Digests first, so that not even the length shows in the time. */
  static boolean same(String one, String other) {
    byte[] key = {1};
    return MessageDigest.isEqual(bytes(digest(key, one)), bytes(digest(key, other)));
  }

  static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
