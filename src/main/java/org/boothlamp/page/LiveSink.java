package org.boothlamp.page;

import java.io.IOException;

/** Somebody who looks live. Used by the stream's thread only, once it was added. */
interface LiveSink {

  /** Where from: for limits. */
  String address();

  /** How much is wanted. */
  LiveKind kind();

  /** Sends some whole events; may block until the thread is interrupted. */
  void send(byte[] events) throws IOException;

  /** Ends the connection. */
  void close();
}
