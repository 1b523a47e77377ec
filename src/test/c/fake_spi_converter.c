/*
 * A file that answers like an SPI device of the kernel with an MCP3208 behind it, so that the real
 * open and ioctl calls of a program can be tested on a machine without an SPI bus.
 *
 *   fake_spi_converter -f -s MOUNT     serves MOUNT/spidev0.0 and MOUNT/control
 *
 * Text written to the control file, one command a write:
 *
 *   level CHANNEL COUNT    the count of an input, 0 to 4095
 *   noise CHANNEL COUNTS   counts that the input goes up and down around it, in turn
 *   fail ERRNO             every transfer fails with that error; 0 mends it
 *   gone 1                 the device is unplugged: its file is missing; 0 brings it back
 *   idle 1                 nothing drives the data line, which is pulled high; 0 mends it
 *
 * Reading the control file gives "mode=0 clock=1000000 transfers=1234".
 *
 * An ioctl on a file of FUSE hands over what the request's number says, here the table of transfers;
 * the buffers it points to are read and written in the caller's memory, which takes root and one
 * process id namespace. The frames are those of Microchip DS21298E, page 21.
 */
#define _GNU_SOURCE
#define FUSE_USE_VERSION 35

#include <errno.h>
#include <fuse.h>
#include <linux/spi/spidev.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <sys/uio.h>

#define DEVICE "/spidev0.0"
#define CONTROL "/control"
#define CHANNELS 8
#define HIGHEST_COUNT 4095
#define LONGEST_TRANSFER 64
#define COMMAND_LENGTH 64
#define COUNT_BITS 12

static struct {
    int level[CHANNELS];
    int noise[CHANNELS];
    unsigned long conversions[CHANNELS];
    int failure;
    int gone;
    int idle;
    uint32_t mode;
    uint32_t clock_hz;
    uint8_t bits_per_word;
    uint8_t lsb_first;
    unsigned long transfers;
} converter = { .clock_hz = 500000, .bits_per_word = 8 };

/* The converter. */

static int convert(int channel)
{
    int up = converter.conversions[channel]++ % 2 == 0;
    int count = converter.level[channel] + (up ? 1 : -1) * converter.noise[channel];

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
    if (null_bit + COUNT_BITS >= bits || !bit_of(out, start + 1) || converter.idle)
        return;
    count = convert(bit_of(out, start + 2) << 2 | bit_of(out, start + 3) << 1 | bit_of(out, start + 4));
    clear_bit(in, null_bit);
    for (unsigned i = 0; i < COUNT_BITS; i++)
        if (!(count >> (COUNT_BITS - 1 - i) & 1))
            clear_bit(in, null_bit + 1 + i);
}

/* The SPI device file. */

static int copy_in(void *to, uint64_t from, size_t length)
{
    struct iovec here = { to, length };
    struct iovec there = { (void *) (uintptr_t) from, length };

    return process_vm_readv(fuse_get_context()->pid, &here, 1, &there, 1, 0) == (ssize_t) length ? 0 : -EFAULT;
}

static int copy_out(uint64_t to, void *from, size_t length)
{
    struct iovec here = { from, length };
    struct iovec there = { (void *) (uintptr_t) to, length };

    return process_vm_writev(fuse_get_context()->pid, &here, 1, &there, 1, 0) == (ssize_t) length ? 0 : -EFAULT;
}

static int transfer(const struct spi_ioc_transfer *wanted)
{
    uint8_t out[LONGEST_TRANSFER] = { 0 };
    uint8_t in[LONGEST_TRANSFER];
    int error = 0;

    if (wanted->len > LONGEST_TRANSFER)
        return -EMSGSIZE;
    if (wanted->tx_buf)
        error = copy_in(out, wanted->tx_buf, wanted->len);
    answer(out, in, wanted->len);
    if (!error && wanted->rx_buf)
        error = copy_out(wanted->rx_buf, in, wanted->len);
    converter.transfers++;
    return error ? error : (int) wanted->len;
}

static int message(unsigned request, const struct spi_ioc_transfer *transfers)
{
    int count = (int) (_IOC_SIZE(request) / sizeof *transfers);
    int total = 0;

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
        kept = &converter.mode;
        break;
    case _IOC_NR(SPI_IOC_RD_MAX_SPEED_HZ):
        kept = &converter.clock_hz;
        break;
    case _IOC_NR(SPI_IOC_RD_BITS_PER_WORD):
        kept = &converter.bits_per_word;
        break;
    case _IOC_NR(SPI_IOC_RD_LSB_FIRST):
        kept = &converter.lsb_first;
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

static int on_ioctl(const char *path, unsigned request, void *arg, struct fuse_file_info *file,
                    unsigned flags, void *data)
{
    (void) arg;
    (void) file;
    (void) flags;
    if (strcmp(path, DEVICE) != 0 || _IOC_TYPE(request) != SPI_IOC_MAGIC)
        return -ENOTTY;
    if (converter.gone)
        return -ENODEV;
    if (_IOC_NR(request) == 0)
        return converter.failure ? -converter.failure : message(request, data);
    return setting(request, data);
}

/* The control file, and what makes a file system of both. */

static int command(const char *text)
{
    int channel;
    int value;

    if (sscanf(text, "level %d %d", &channel, &value) == 2 && channel >= 0 && channel < CHANNELS)
        converter.level[channel] = value;
    else if (sscanf(text, "noise %d %d", &channel, &value) == 2 && channel >= 0 && channel < CHANNELS)
        converter.noise[channel] = value;
    else if (sscanf(text, "fail %d", &value) == 1)
        converter.failure = value;
    else if (sscanf(text, "gone %d", &value) == 1)
        converter.gone = value;
    else if (sscanf(text, "idle %d", &value) == 1)
        converter.idle = value;
    else
        return -EINVAL;
    return 0;
}

static int on_write(const char *path, const char *bytes, size_t length, off_t offset,
                    struct fuse_file_info *file)
{
    char text[COMMAND_LENGTH] = { 0 };
    int error;

    (void) offset;
    (void) file;
    if (strcmp(path, CONTROL) != 0 || length >= sizeof text)
        return -EINVAL;
    memcpy(text, bytes, length);
    error = command(text);
    return error ? error : (int) length;
}

static int on_read(const char *path, char *bytes, size_t length, off_t offset, struct fuse_file_info *file)
{
    char text[COMMAND_LENGTH];
    size_t size;

    (void) file;
    if (strcmp(path, CONTROL) != 0)
        return -EINVAL;
    size = (size_t) snprintf(text, sizeof text, "mode=%u clock=%u transfers=%lu\n", converter.mode,
                             converter.clock_hz, converter.transfers);
    if ((size_t) offset >= size)
        return 0;
    if (length > size - (size_t) offset)
        length = size - (size_t) offset;
    memcpy(bytes, text + offset, length);
    return (int) length;
}

static int exists(const char *path)
{
    return strcmp(path, CONTROL) == 0 || (strcmp(path, DEVICE) == 0 && !converter.gone);
}

static int on_getattr(const char *path, struct stat *status, struct fuse_file_info *file)
{
    (void) file;
    memset(status, 0, sizeof *status);
    status->st_nlink = 1;
    if (strcmp(path, "/") == 0)
        status->st_mode = S_IFDIR | 0755;
    else
        status->st_mode = S_IFREG | 0666;
    return exists(path) || strcmp(path, "/") == 0 ? 0 : -ENOENT;
}

static int on_open(const char *path, struct fuse_file_info *file)
{
    file->direct_io = 1;
    return exists(path) ? 0 : -ENOENT;
}

static int on_truncate(const char *path, off_t size, struct fuse_file_info *file)
{
    (void) size;
    (void) file;
    return exists(path) ? 0 : -ENOENT;
}

static void *on_init(struct fuse_conn_info *connection, struct fuse_config *config)
{
    (void) connection;
    config->entry_timeout = 0;
    config->attr_timeout = 0;
    config->negative_timeout = 0;
    return NULL;
}

static const struct fuse_operations operations = {
    .init = on_init,
    .getattr = on_getattr,
    .open = on_open,
    .truncate = on_truncate,
    .read = on_read,
    .write = on_write,
    .ioctl = on_ioctl,
};

int main(int count, char **arguments)
{
    return fuse_main(count, arguments, &operations, NULL);
}
