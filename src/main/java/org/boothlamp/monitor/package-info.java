/** The one step that calls the core in order, and the ports it needs: source, lamp, log, clocks. */
package org.boothlamp.monitor;
