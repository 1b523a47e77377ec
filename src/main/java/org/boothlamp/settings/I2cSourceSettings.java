package org.boothlamp.settings;

import org.boothlamp.acquisition.I2cAddress;
import org.boothlamp.acquisition.I2cDevice;
import org.boothlamp.acquisition.I2cSampling;

/**
 * A converter on the I2C bus. Immutable.
 *
 * @param address where it is
 * @param device what it is
 * @param sampling how it is set; its pairs are no more than half its conversions
 */
public record I2cSourceSettings(I2cAddress address, I2cDevice device, I2cSampling sampling)
    implements SourceSettings {}
