package org.boothlamp.technique;

/** What the short circuits of a wire arc say of its setting. */
public enum TransferState {
  /** The source is too slow, or no wire is welded. */
  NOT_MEASURED("not measured"),
  /** No short circuits to speak of, and too few amps for spray as far as the wire is known. */
  NO_SHORTS("no short-circuit transfer"),
  /** No short circuits, and amps enough for spray. */
  SPRAY("spray, as far as the amps tell"),
  /** The wire pushes into the pool. */
  TOO_COLD("too cold, stubbing"),
  /** Too few and too short contacts. */
  TOO_HOT("too hot, leaving short-circuit"),
  /** Contacts come, but unevenly. */
  UNEVEN("uneven"),
  /** As it should be. */
  STEADY("steady");

  private final String word;

  TransferState(String word) {
    this.word = word;
  }

  /** The words for people and files. */
  public String word() {
    return word;
  }
}
