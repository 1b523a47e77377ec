/** What amps and volts say of arc length, stick-out, machine setting and metal transfer. */
package org.boothlamp.technique;
