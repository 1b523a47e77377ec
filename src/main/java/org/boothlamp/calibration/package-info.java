/** A sensor against a reference meter: the fit, its uncertainty, accept or refuse. */
package org.boothlamp.calibration;
