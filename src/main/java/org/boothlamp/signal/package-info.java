/** Counts to amps and volts: slots, averages, RMS, true power, short circuits. */
package org.boothlamp.signal;
