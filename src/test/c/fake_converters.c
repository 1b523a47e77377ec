/*
 * Files that answer like device files of the kernel with converters behind them, so that the real
 * open, read, write and ioctl calls of a program can be tested on a machine without such buses.
 *
 *   fake_converters -f -s MOUNT     serves MOUNT/spidev0.0, MOUNT/i2c-1 and MOUNT/control
 *
 * Text written to the control file, one command a write, the first word being "spi" or "i2c":
 *
 *   spi level INPUT VALUE    what is at an input: counts for spi, microvolts for i2c
 *   spi noise INPUT VALUE    how much it goes up and down around that, in turn
 *   spi fail ERRNO           every transfer fails with that error; 0 mends it
 *   spi gone 1               the device is unplugged: its file is missing; 0 brings it back
 *
 * and what the devices' own files say. Reading the control file gives a line for each device.
 *
 * An ioctl on a file of FUSE hands over what the request's number says; what that points to is read
 * and written in the caller's memory, which takes root and one process id namespace.
 */
#define _GNU_SOURCE
#define FUSE_USE_VERSION 35

#include "fake_converters.h"

#include <errno.h>
#include <fuse.h>
#include <stdio.h>
#include <string.h>
#include <sys/uio.h>

#define CONTROL "/control"
#define LONGEST_TEXT 256

static struct device *const devices[] = { &spi_device, &i2c_device };

#define DEVICES (sizeof devices / sizeof devices[0])

int next_level(struct input *input)
{
    return input->conversions++ % 2 == 0 ? input->level + input->noise : input->level - input->noise;
}

int copy_from_caller(void *to, uint64_t from, size_t length)
{
    struct iovec here = { to, length };
    struct iovec there = { (void *) (uintptr_t) from, length };

    return process_vm_readv(fuse_get_context()->pid, &here, 1, &there, 1, 0) == (ssize_t) length ? 0 : -EFAULT;
}

int copy_to_caller(uint64_t to, void *from, size_t length)
{
    struct iovec here = { from, length };
    struct iovec there = { (void *) (uintptr_t) to, length };

    return process_vm_writev(fuse_get_context()->pid, &here, 1, &there, 1, 0) == (ssize_t) length ? 0 : -EFAULT;
}

static struct device *device_at(const char *path)
{
    for (size_t i = 0; i < DEVICES; i++)
        if (strcmp(path, devices[i]->path) == 0)
            return devices[i];
    return NULL;
}

/* The control file. */

static int command(struct device *device, const char *key, int first, int second, int values)
{
    int is_input = first >= 0 && first < INPUTS;

    if (values == 2 && is_input && strcmp(key, "level") == 0)
        device->inputs[first].level = second;
    else if (values == 2 && is_input && strcmp(key, "noise") == 0)
        device->inputs[first].noise = second;
    else if (values == 1 && strcmp(key, "fail") == 0)
        device->failure = first;
    else if (values == 1 && strcmp(key, "gone") == 0)
        device->gone = first;
    else
        return values == 1 ? device->set(key, first) : -EINVAL;
    return 0;
}

static int take_command(const char *bytes, size_t length)
{
    char text[LONGEST_TEXT] = { 0 };
    char name[8];
    char key[16];
    int first = 0;
    int second = 0;
    int words;

    if (length >= sizeof text)
        return -EINVAL;
    memcpy(text, bytes, length);
    words = sscanf(text, "%7s %15s %d %d", name, key, &first, &second);
    for (size_t i = 0; i < DEVICES; i++)
        if (words >= 3 && strcmp(name, devices[i]->name) == 0)
            return command(devices[i], key, first, second, words - 2);
    return -EINVAL;
}

static int give_state(char *bytes, size_t length, off_t offset)
{
    char text[LONGEST_TEXT] = { 0 };
    size_t size = 0;

    for (size_t i = 0; i < DEVICES; i++)
        size += (size_t) devices[i]->describe(text + size, sizeof text - size);
    if ((size_t) offset >= size)
        return 0;
    if (length > size - (size_t) offset)
        length = size - (size_t) offset;
    memcpy(bytes, text + offset, length);
    return (int) length;
}

/* What makes a file system of it. */

static int transfer_error(const struct device *device)
{
    return device->gone ? -ENODEV : -device->failure;
}

static int on_ioctl(const char *path, unsigned request, void *argument, struct fuse_file_info *file,
                    unsigned flags, void *data)
{
    struct device *device = device_at(path);

    (void) file;
    (void) flags;
    if (device == NULL)
        return -ENOTTY;
    return device->gone ? -ENODEV : device->ioctl(request, argument, data);
}

static int on_write(const char *path, const char *bytes, size_t length, off_t offset,
                    struct fuse_file_info *file)
{
    struct device *device = device_at(path);
    int error;

    (void) offset;
    (void) file;
    error = device == NULL ? take_command(bytes, length) : transfer_error(device);
    if (error != 0)
        return error;
    return device == NULL ? (int) length : device->write((const uint8_t *) bytes, length);
}

static int on_read(const char *path, char *bytes, size_t length, off_t offset, struct fuse_file_info *file)
{
    struct device *device = device_at(path);
    int error;

    (void) file;
    if (device == NULL)
        return give_state(bytes, length, offset);
    error = transfer_error(device);
    return error != 0 ? error : device->read((uint8_t *) bytes, length);
}

static int exists(const char *path)
{
    const struct device *device = device_at(path);

    return device != NULL ? !device->gone : strcmp(path, CONTROL) == 0;
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
