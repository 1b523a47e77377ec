/** The state machine that finds segments, arc-outs, touches and stuck electrodes. */
package org.boothlamp.arc;
