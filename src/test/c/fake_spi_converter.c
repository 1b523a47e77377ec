/*
 * An MCP3208 on SPI. Its levels are counts, 0 to 4095. A command of its own:
 *
 *   spi idle 1    nothing drives the data line, which is pulled high; 0 mends it
 *
 * Its line in the control file reads "spi mode=0 clock=1000000 transfers=1234". The frames are those of
 * Microchip DS21298E, page 21.
 */
#include "fake_converters.h"

#include <errno.h>
#include <linux/spi/spidev.h>
#include <stdio.h>
#include <string.h>

#define HIGHEST_COUNT 4095
#define COUNT_BITS 12
#define LONGEST_TRANSFER 64

static struct {
    int idle;
    uint32_t mode;
    uint32_t clock_hz;
    uint8_t bits_per_word;
    uint8_t lsb_first;
    unsigned long transfers;
} bus = { .clock_hz = 500000, .bits_per_word = 8 };

/* The converter. */

static int convert(int channel)
{
    int count = next_level(&spi_device.inputs[channel]);

    return count < 0 ? 0 : count > HIGHEST_COUNT ? HIGHEST_COUNT : count;
}

static int bit_of(const uint8_t *bytes, unsigned bit)
{
    return bytes[bit / 8] >> (7 - bit % 8) & 1;
}

static void clear_bit(uint8_t *bytes, unsigned bit)
{
    bytes[bit / 8] &= (uint8_t) ~(1u << (7 - bit % 8));
}

/* Start bit, single-ended, D2, D1, D0; one clock to sample; null bit; twelve bits of the count. */
static void answer(const uint8_t *out, uint8_t *in, unsigned length)
{
    unsigned bits = 8 * length;
    unsigned start = 0;
    unsigned null_bit;
    int count;

    memset(in, 0xFF, length);
    while (start < bits && !bit_of(out, start))
        start++;
    null_bit = start + 6;
    if (null_bit + COUNT_BITS >= bits || !bit_of(out, start + 1) || bus.idle)
        return;
    count = convert(bit_of(out, start + 2) << 2 | bit_of(out, start + 3) << 1 | bit_of(out, start + 4));
    clear_bit(in, null_bit);
    for (unsigned i = 0; i < COUNT_BITS; i++)
        if (!(count >> (COUNT_BITS - 1 - i) & 1))
            clear_bit(in, null_bit + 1 + i);
}

/* The device file. */

static int transfer(const struct spi_ioc_transfer *wanted)
{
    uint8_t out[LONGEST_TRANSFER] = { 0 };
    uint8_t in[LONGEST_TRANSFER];
    int error = 0;

    if (wanted->len > LONGEST_TRANSFER)
        return -EMSGSIZE;
    if (wanted->tx_buf)
        error = copy_from_caller(out, wanted->tx_buf, wanted->len);
    answer(out, in, wanted->len);
    if (!error && wanted->rx_buf)
        error = copy_to_caller(wanted->rx_buf, in, wanted->len);
    bus.transfers++;
    return error ? error : (int) wanted->len;
}

static int message(unsigned request, const struct spi_ioc_transfer *transfers)
{
    int count = (int) (_IOC_SIZE(request) / sizeof *transfers);
    int total = 0;

    if (spi_device.failure)
        return -spi_device.failure;
    for (int i = 0; i < count; i++) {
        int length = transfer(&transfers[i]);
        if (length < 0)
            return length;
        total += length;
    }
    return total;
}

/* Each setting has a request to read it and one to write it, of the same number and size. */
static int setting(unsigned request, void *data)
{
    void *kept;

    switch (_IOC_NR(request)) {
    case _IOC_NR(SPI_IOC_RD_MODE):
    case _IOC_NR(SPI_IOC_RD_MODE32):
        kept = &bus.mode;
        break;
    case _IOC_NR(SPI_IOC_RD_MAX_SPEED_HZ):
        kept = &bus.clock_hz;
        break;
    case _IOC_NR(SPI_IOC_RD_BITS_PER_WORD):
        kept = &bus.bits_per_word;
        break;
    case _IOC_NR(SPI_IOC_RD_LSB_FIRST):
        kept = &bus.lsb_first;
        break;
    default:
        return -ENOTTY;
    }
    if (_IOC_DIR(request) == _IOC_READ)
        memcpy(data, kept, _IOC_SIZE(request));
    else
        memcpy(kept, data, _IOC_SIZE(request));
    return 0;
}

static int spi_ioctl(unsigned request, void *argument, void *data)
{
    (void) argument;
    if (_IOC_TYPE(request) != SPI_IOC_MAGIC)
        return -ENOTTY;
    return _IOC_NR(request) == 0 ? message(request, data) : setting(request, data);
}

/* Half-duplex transfers, which the converter has no use for. */
static int no_read(uint8_t *bytes, size_t length)
{
    (void) bytes;
    (void) length;
    return -EINVAL;
}

static int no_write(const uint8_t *bytes, size_t length)
{
    (void) bytes;
    (void) length;
    return -EINVAL;
}

static int spi_set(const char *key, int value)
{
    if (strcmp(key, "idle") != 0)
        return -EINVAL;
    bus.idle = value;
    return 0;
}

static int spi_describe(char *text, size_t size)
{
    return snprintf(text, size, "spi mode=%u clock=%u transfers=%lu\n", bus.mode, bus.clock_hz, bus.transfers);
}

struct device spi_device = {
    .name = "spi",
    .path = "/spidev0.0",
    .ioctl = spi_ioctl,
    .read = no_read,
    .write = no_write,
    .set = spi_set,
    .describe = spi_describe,
};
