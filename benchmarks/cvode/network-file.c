/* Reads a network from the list of numbers that problem-file.mjs writes, and tabulates its oil's film factor. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "network.h"

/* ASTM D341: line through the viscosities [mm2/s] at 40 and 100 C, read at temp [K]. */
static double walther(double nu40, double nu100, double temp) {
  double nu[2] = {nu40, nu100}, y[2];
  for (int k = 0; k < 2; k++) y[k] = log10(log10(nu[k] + 0.7 + exp(-1.47 - 1.84 * nu[k] - 0.51 * nu[k] * nu[k])));
  double b = (y[0] - y[1]) / log10(373.15 / 313.15), a = y[0] + b * log10(313.15);
  double x = pow(10, pow(10, a - b * log10(temp))) - 0.7;
  return x - exp(-0.7487 - 3.295 * x + 0.6119 * x * x - 0.3193 * x * x * x);
}

static void tabulate_film(Network *net, double nu40, double nu100) {
  const int n = 320;
  const double from = 203.15, spacing = 1, step = 0.01, warm = walther(nu40, nu100, 323.15);
#define PHI(T) pow(warm / walther(nu40, nu100, T), 0.25)
  net->film_from = from;
  net->film_per_spacing = 1 / spacing;
  net->film_intervals = n;
  net->film_piece = malloc(4 * n * sizeof(double));
  for (int i = 0; i < n; i++) {
    double t0 = from + i * spacing, t1 = t0 + spacing;
    double v0 = PHI(t0), v1 = PHI(t1);
    double s0 = (PHI(t0 + step) - PHI(t0 - step)) / (2 * step) * spacing;
    double s1 = (PHI(t1 + step) - PHI(t1 - step)) / (2 * step) * spacing;
    double *c = net->film_piece + 4 * i;
    c[0] = v0;
    c[1] = s0;
    c[2] = 3 * (v1 - v0) - 2 * s0 - s1;
    c[3] = s0 + s1 - 2 * (v1 - v0);
  }
}

static double number(FILE *file) {
  double value;
  if (fscanf(file, "%lf", &value) != 1) {
    fprintf(stderr, "missing number in the problem file\n");
    exit(2);
  }
  return value;
}

static double *numbers(FILE *file, int count) {
  double *values = malloc((count > 0 ? count : 1) * sizeof(double));
  for (int k = 0; k < count; k++) values[k] = number(file);
  return values;
}

Network *network_read(const char *path) {
  FILE *file = fopen(path, "r");
  if (file == NULL) {
    perror(path);
    exit(2);
  }
  Network *net = calloc(1, sizeof *net);
  int *sizes[] = {&net->parts, &net->inputs, &net->links, &net->sources,
                  &net->configurations, &net->stretches, &net->samples};
  for (int k = 0; k < 7; k++) *sizes[k] = (int)number(file);
  int rows = net->parts + net->inputs;
  net->temp = calloc(rows, sizeof(double));
  net->net = calloc(rows, sizeof(double));
  double nu40 = number(file), nu100 = number(file);
  tabulate_film(net, nu40, nu100);
  net->capacity = numbers(file, net->parts);
  net->capacity_slope = numbers(file, net->parts);
  net->latent = numbers(file, net->parts);
  net->light = numbers(file, net->parts);
  net->inverse = malloc(net->parts * sizeof(double));
  net->varying_part = malloc(net->parts * sizeof(int));
  for (int i = 0; i < net->parts; i++) {
    net->inverse[i] = 1 / net->capacity[i];
    if (net->capacity_slope[i] != 0 || net->latent[i] != 0) net->varying_part[net->varying++] = i;
  }
  for (int law = 0; law < LAWS; law++) net->by_law[law] = malloc((net->links + 1) * sizeof(Link));
  for (int l = 0; l < net->links; l++) {
    int law = (int)number(file);
    Link *link = &net->by_law[law][net->count[law]++];
    link->number = l;
    link->from = (int)number(file);
    link->to = (int)number(file);
    link->factor = (int)number(file);
    link->wind = (int)number(file);
    link->film = (int)number(file);
  }
  net->source = malloc((net->sources + 1) * sizeof(Source));
  for (int s = 0; s < net->sources; s++) {
    net->source[s].part = (int)number(file);
    net->source[s].senses = (int)number(file);
    net->source[s].set_point = number(file);
    net->source[s].width = number(file);
  }
  net->conductance = numbers(file, net->configurations * net->links);
  net->power = numbers(file, net->configurations * net->sources);
  net->stretch = malloc(net->stretches * sizeof(Stretch));
  for (int s = 0; s < net->stretches; s++) {
    Stretch *stretch = &net->stretch[s];
    stretch->from = number(file);
    stretch->to = number(file);
    stretch->configuration = (int)number(file);
    stretch->inputs_from = numbers(file, net->inputs);
    double *slope = numbers(file, net->inputs);
    for (int k = 0; k < net->inputs; k++)
      slope[k] = (slope[k] - stretch->inputs_from[k]) / (stretch->to - stretch->from);
    stretch->inputs_slope = slope;
  }
  net->initial = numbers(file, net->parts);
  net->sample_time = numbers(file, net->samples);
  fclose(file);
  network_enter(net, 0);
  return net;
}
