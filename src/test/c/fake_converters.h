/* What the fake converters and the program that serves them as files know of each other. */
#ifndef FAKE_CONVERTERS_H
#define FAKE_CONVERTERS_H

#include <stddef.h>
#include <stdint.h>

#define INPUTS 8

struct input {
    int level;
    int noise;
    unsigned long conversions;
};

/* One device file. Its functions answer like the kernel's: bytes or 0, or a negative error number. */
struct device {
    const char *name; /* first word of its commands */
    const char *path;
    int failure; /* error number of every transfer, 0 for none */
    int gone;
    struct input inputs[INPUTS];

    int (*ioctl)(unsigned request, void *argument, void *data);
    int (*read)(uint8_t *bytes, size_t length);
    int (*write)(const uint8_t *bytes, size_t length);
    int (*set)(const char *key, int value); /* commands of its own */
    int (*describe)(char *text, size_t size);
};

extern struct device spi_device;
extern struct device i2c_device;

/* An input's level, with its noise up and down in turn. */
int next_level(struct input *input);

/* Memory of the program whose request is served. */
int copy_from_caller(void *to, uint64_t from, size_t length);
int copy_to_caller(uint64_t to, void *from, size_t length);

#endif
