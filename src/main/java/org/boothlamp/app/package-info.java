/**
 * Main and the wiring: the only place that picks implementations and owns start and close order.
 */
package org.boothlamp.app;
