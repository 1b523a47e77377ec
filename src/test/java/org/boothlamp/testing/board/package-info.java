/**
 * Programs behind {@code deploy/emulated-board/run}: its recording, its eye on the pins, its table.
 */
package org.boothlamp.testing.board;
