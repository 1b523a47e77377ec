package org.boothlamp.sync;

/**
 * Takes batches. Opened before the first one and closed after the last or after a failure; may be
 * opened again. Sending a row a second time changes nothing. Confined to one thread.
 */
interface Destination extends AutoCloseable {

  /** What is sent to. */
  SyncTarget target();

  /** Gets ready; does nothing if it is. */
  void open() throws SyncException;

  /**
   * Takes a batch, whole or not at all.
   *
   * @throws SyncException if it is not certain that every row of it is kept for good
   */
  void send(Batch batch) throws SyncException;

  /** Lets go of everything; never fails. */
  @Override
  void close();
}
