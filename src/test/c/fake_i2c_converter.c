/*
 * An ADS1115 or ADS1015 on I2C at address 0x48. Its levels are microvolts. A command of its own:
 *
 *   i2c bits 12    it is an ADS1015; 16 makes it an ADS1115 again
 *
 * Its line in the control file reads "i2c slave=0x48 config=0xc3e3 conversions=1234".
 *
 * Registers, full scales, rates and steps are those of Texas Instruments SBAS444D (ADS1115) and SBAS473E
 * (ADS1015). A conversion takes as long as its rate says, and the configuration reads busy for so long.
 * An address where nobody is gives EREMOTEIO, the kernel's word for a missing acknowledge.
 */
#define _GNU_SOURCE

#include "fake_converters.h"

#include <errno.h>
#include <linux/i2c-dev.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

#define ADDRESS 0x48
#define CONVERSION 0
#define CONFIG 1
#define START_OR_IDLE 0x8000
#define SINGLE_ENDED 0x4000
#define NANOS_PER_SECOND 1000000000L

/* Nanovolts of one count of 16 bits at full scales of 6.144, 4.096, 2.048, 1.024, 0.512 and 0.256 V. */
static const double step_nanovolts[] = { 187500, 125000, 62500, 31250, 15625, 7812.5, 7812.5, 7812.5 };

static const int ads1115_rates[] = { 8, 16, 32, 64, 128, 250, 475, 860 };
static const int ads1015_rates[] = { 128, 250, 490, 920, 1600, 2400, 3300, 3300 };

static struct {
    unsigned slave;
    int bits;
    unsigned pointer;
    unsigned config;
    int16_t converted;
    long ready_nanos;
    unsigned long conversions;
} bus = { .bits = 16, .config = 0x8583 };

static long now_nanos(void)
{
    struct timespec now;

    clock_gettime(CLOCK_MONOTONIC, &now);
    return now.tv_sec * NANOS_PER_SECOND + now.tv_nsec;
}

/* Rounded to the nearest count, held at the ends; twelve bits stand at the register's upper end. */
static int16_t convert(struct input *input, unsigned gain)
{
    int shift = 16 - bus.bits;
    double exact = next_level(input) * 1000.0 / (step_nanovolts[gain] * (1 << shift));
    int count = (int) (exact < 0 ? exact - 0.5 : exact + 0.5);
    int highest = (1 << (bus.bits - 1)) - 1;

    count = count > highest ? highest : count < -highest - 1 ? -highest - 1 : count;
    return (int16_t) (count * (1 << shift));
}

static void start(unsigned config)
{
    const int *rates = bus.bits == 16 ? ads1115_rates : ads1015_rates;
    unsigned channel = config >> 12 & 3;

    bus.config = config;
    if (!(config & START_OR_IDLE) || !(config & SINGLE_ENDED))
        return;
    bus.converted = convert(&i2c_device.inputs[channel], config >> 9 & 7);
    bus.ready_nanos = now_nanos() + NANOS_PER_SECOND / rates[config >> 5 & 7];
    bus.conversions++;
}

static unsigned config_now(void)
{
    return now_nanos() < bus.ready_nanos ? bus.config & ~START_OR_IDLE : bus.config | START_OR_IDLE;
}

/* One byte moves the pointer, two more write the register that it then points to. */
static int i2c_write(const uint8_t *bytes, size_t length)
{
    if (bus.slave != ADDRESS)
        return -EREMOTEIO;
    if (length != 1 && length != 3)
        return -EINVAL;
    bus.pointer = bytes[0];
    if (length == 3 && bus.pointer == CONFIG)
        start((unsigned) bytes[1] << 8 | bytes[2]);
    return (int) length;
}

static int i2c_read(uint8_t *bytes, size_t length)
{
    unsigned word = bus.pointer == CONVERSION ? (uint16_t) bus.converted : config_now();

    if (bus.slave != ADDRESS)
        return -EREMOTEIO;
    if (length != 2)
        return -EINVAL;
    bytes[0] = (uint8_t) (word >> 8);
    bytes[1] = (uint8_t) word;
    return 2;
}

/* The address comes as the argument itself, not behind a pointer. */
static int i2c_ioctl(unsigned request, void *argument, void *data)
{
    (void) data;
    if (request != I2C_SLAVE)
        return -ENOTTY;
    bus.slave = (unsigned) (uintptr_t) argument;
    return 0;
}

static int i2c_set(const char *key, int value)
{
    if (strcmp(key, "bits") != 0 || (value != 12 && value != 16))
        return -EINVAL;
    bus.bits = value;
    return 0;
}

static int i2c_describe(char *text, size_t size)
{
    return snprintf(text, size, "i2c slave=0x%02x config=0x%04x conversions=%lu\n", bus.slave, bus.config,
                    bus.conversions);
}

struct device i2c_device = {
    .name = "i2c",
    .path = "/i2c-1",
    .ioctl = i2c_ioctl,
    .read = i2c_read,
    .write = i2c_write,
    .set = i2c_set,
    .describe = i2c_describe,
};
