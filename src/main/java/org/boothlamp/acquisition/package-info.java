/**
 * Where sample pairs come from: serial front end, converters on SPI and I2C, kernel devices,
 * recording, simulated booth.
 */
package org.boothlamp.acquisition;
