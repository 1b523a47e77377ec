/*
 * The single pass that the monitor's slots are held against: counts to amps and volts, sums, least
 * and greatest, short circuits, per slot of 10 ms. Plain C, as one would write it.
 *
 *   single_pass FILE.wav SECONDS      prints pairs per second of the best 50 ms
 *
 * The file is 16-bit PCM with two channels, current and voltage in counts, behind a 44-byte header.
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { PAIRS_PER_SECOND = 5000, SLOT_PAIRS = PAIRS_PER_SECOND / 100, HEADER_BYTES = 44 };

static const double AMPS_PER_COUNT = 0.29296875;
static const double VOLTS_PER_COUNT = 0.0244140625;
static const double SPELL_SECONDS = 0.05;
static const double SHORT_VOLTS = 8;
static const double NOISE_VOLTS = 1;
static const double FLOWING_AMPS = 9;
static const int LEAST_SHORT_PAIRS = 3; /* 0.5 ms */

struct slot {
  double amps, volts, amps_squared, volts_squared, watts, absolute_amps, absolute_volts;
  double lowest_amps, highest_amps, lowest_volts, highest_volts;
  int short_circuits;
};

static int short_run;

static void reduce(const int16_t *pairs, struct slot *slot) {
  struct slot s = {.lowest_amps = INFINITY,
                   .highest_amps = -INFINITY,
                   .lowest_volts = INFINITY,
                   .highest_volts = -INFINITY};
  int run = short_run;
  for (int k = 0; k < SLOT_PAIRS; k++) {
    double i = AMPS_PER_COUNT * pairs[2 * k];
    double v = VOLTS_PER_COUNT * pairs[2 * k + 1];
    s.amps += i;
    s.volts += v;
    s.amps_squared += i * i;
    s.volts_squared += v * v;
    s.watts += v * i;
    s.absolute_amps += fabs(i);
    s.absolute_volts += fabs(v);
    if (i < s.lowest_amps) s.lowest_amps = i;
    if (i > s.highest_amps) s.highest_amps = i;
    if (v < s.lowest_volts) s.lowest_volts = v;
    if (v > s.highest_volts) s.highest_volts = v;
    double along = i < 0 ? -v : v; /* volts in the direction of the current */
    if (fabs(i) < FLOWING_AMPS) {
      run = 0;
    } else if (along < SHORT_VOLTS && along > -NOISE_VOLTS) {
      run++;
    } else {
      s.short_circuits += run >= LEAST_SHORT_PAIRS;
      run = 0;
    }
  }
  short_run = run;
  *slot = s;
}

static int16_t *read_pairs(const char *name, long *slots) {
  FILE *file = fopen(name, "rb");
  if (file == NULL) {
    perror(name);
    exit(1);
  }
  fseek(file, 0, SEEK_END);
  long bytes = ftell(file) - HEADER_BYTES;
  fseek(file, HEADER_BYTES, SEEK_SET);
  int16_t *pairs = malloc((size_t)bytes);
  if (pairs == NULL || fread(pairs, 1, (size_t)bytes, file) != (size_t)bytes) {
    fprintf(stderr, "%s: cannot be read\n", name);
    exit(1);
  }
  fclose(file);
  *slots = bytes / (2 * (long)sizeof(int16_t)) / SLOT_PAIRS;
  return pairs;
}

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

int main(int argc, char **argv) {
  if (argc != 3) {
    fprintf(stderr, "usage: single_pass FILE.wav SECONDS\n");
    return 2;
  }
  long slots;
  int16_t *pairs = read_pairs(argv[1], &slots);
  struct slot *reduced = malloc((size_t)slots * sizeof *reduced);
  double seconds = atof(argv[2]);
  long shorts = 0;
  double energy = 0;
  double best = 0;
  double start = now();
  while (now() - start < seconds) {
    long rounds = 0;
    double spell = now();
    do {
      short_run = 0;
      shorts = 0;
      energy = 0;
      for (long k = 0; k < slots; k++) {
        reduce(pairs + k * 2 * SLOT_PAIRS, &reduced[k]);
        shorts += reduced[k].short_circuits;
        energy += reduced[k].watts / PAIRS_PER_SECOND;
      }
      rounds++;
    } while (now() - spell < SPELL_SECONDS);
    double rate = (double)(rounds * slots * SLOT_PAIRS) / (now() - spell);
    if (rate > best) best = rate;
  }
  printf("%.0f pairs/s, %ld short circuits, %.1f J\n", best, shorts, energy);
  free(reduced);
  free(pairs);
  return 0;
}
