/* Right-hand side and analytic Jacobian of a heat network: the same equations as src/thermal, one aircraft. */
#include "network.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define FREEZING 273.15
#define SMALL (0.1 * 0.1)
#define REFERENCE 10.0
#define MELTING_WIDTH 0.5
#define SQRT_PI 1.7724538509055160273
#define RADIATION_SCALE (1 / (4 * FREEZING * FREEZING * FREEZING))

static double film(const Network *net, double temp, double *slope);

void network_enter(Network *net, int stretch) {
  net->now = &net->stretch[stretch];
  net->g = net->conductance + net->now->configuration * net->links;
  net->p = net->power + net->now->configuration * net->sources;
}

static void load(Network *net, double t, const double *y) {
  const Stretch *s = net->now;
  memcpy(net->temp, y, net->parts * sizeof(double));
  for (int k = 0; k < net->inputs; k++)
    net->temp[net->parts + k] = s->inputs_from[k] + s->inputs_slope[k] * (t - s->from);
  for (int v = 0; v < net->varying; v++) {
    int i = net->varying_part[v];
    double x = y[i] - FREEZING, c = net->capacity[i] + net->capacity_slope[i] * x;
    if (net->latent[i] != 0)
      c += net->latent[i] / (MELTING_WIDTH * SQRT_PI) * exp(-(x / MELTING_WIDTH) * (x / MELTING_WIDTH));
    net->inverse[i] = 1 / c;
  }
}

static inline double quarter_power(double d) {
  return sqrt(sqrt(sqrt((d * d + SMALL) * (1 / (REFERENCE * REFERENCE)))));
}

static inline void put(Network *net, const Link *link, double q) {
  const double *temp = net->temp;
  if (link->factor >= 0) q *= temp[link->factor];
  if (link->film) q *= film(net, 0.5 * (temp[link->from] + temp[link->to]), NULL);
  /* net has room for the inputs too: what flows into them is never read. */
  net->net[link->from] -= q;
  net->net[link->to] += q;
}

/* Net heat into each part [W]. */
static void balance(Network *net) {
  const double *temp = net->temp, *g = net->g;
  memset(net->net, 0, net->parts * sizeof(double));
  for (int l = 0; l < net->count[CONDUCTION]; l++) {
    const Link *link = &net->by_law[CONDUCTION][l];
    put(net, link, g[link->number] * (temp[link->from] - temp[link->to]));
  }
  for (int l = 0; l < net->count[FREE_CONVECTION]; l++) {
    const Link *link = &net->by_law[FREE_CONVECTION][l];
    double d = temp[link->from] - temp[link->to];
    put(net, link, g[link->number] * quarter_power(d) * d);
  }
  for (int l = 0; l < net->count[VENTILATION]; l++) {
    const Link *link = &net->by_law[VENTILATION][l];
    double d = temp[link->from] - temp[link->to];
    put(net, link, g[link->number] * sqrt((sqrt(d * d + SMALL) + temp[link->wind]) * (1 / REFERENCE)) * d);
  }
  for (int l = 0; l < net->count[RADIATION]; l++) {
    const Link *link = &net->by_law[RADIATION][l];
    double a = temp[link->from], b = temp[link->to];
    put(net, link, g[link->number] * RADIATION_SCALE * (a * a + b * b) * (a + b) * (a - b));
  }
  for (int s = 0; s < net->sources; s++) {
    const Source *source = &net->source[s];
    double power = net->p[s];
    if (source->senses >= 0 && power != 0)
      power /= 1 + exp((temp[source->senses] - source->set_point) / source->width);
    net->net[source->part] += power;
  }
}

void network_derivative(Network *net, double t, const double *y, double *ydot) {
  load(net, t, y);
  balance(net);
  for (int i = 0; i < net->parts; i++) ydot[i] = net->net[i] * net->inverse[i];
}

/* Adds a link's slopes: flow q, by its two ends without factors, to the Jacobian. */
static inline void put_slopes(Network *net, const Link *link, double q, double by_a, double by_b, double **column) {
  const double *temp = net->temp, *inverse = net->inverse;
  int a = link->from, b = link->to;
  double factor = link->factor >= 0 ? temp[link->factor] : 1;
  if (link->film) {
    double slope, phi = film(net, 0.5 * (temp[a] + temp[b]), &slope);
    double by_mean = 0.5 * factor * q * slope;
    by_a = by_a * factor * phi + by_mean;
    by_b = by_b * factor * phi + by_mean;
  } else {
    by_a *= factor;
    by_b *= factor;
  }
  if (a < net->parts) {
    column[a][a] -= by_a * inverse[a];
    if (b < net->parts) column[b][a] -= by_b * inverse[a];
  }
  if (b < net->parts) {
    column[b][b] += by_b * inverse[b];
    if (a < net->parts) column[a][b] += by_a * inverse[b];
  }
}

void network_jacobian(Network *net, double t, const double *y, double **column) {
  const double *temp = net->temp, *g = net->g;
  load(net, t, y);
  for (int l = 0; l < net->count[CONDUCTION]; l++) {
    const Link *link = &net->by_law[CONDUCTION][l];
    double k = g[link->number];
    put_slopes(net, link, k * (temp[link->from] - temp[link->to]), k, -k, column);
  }
  for (int l = 0; l < net->count[FREE_CONVECTION]; l++) {
    const Link *link = &net->by_law[FREE_CONVECTION][l];
    double d = temp[link->from] - temp[link->to], k = g[link->number] * quarter_power(d);
    double s = k * (1 + 0.25 * d * d / (d * d + SMALL));
    put_slopes(net, link, k * d, s, -s, column);
  }
  for (int l = 0; l < net->count[VENTILATION]; l++) {
    const Link *link = &net->by_law[VENTILATION][l];
    double d = temp[link->from] - temp[link->to], size = sqrt(d * d + SMALL);
    double root = sqrt((size + temp[link->wind]) * (1 / REFERENCE));
    double s = g[link->number] * (root + 0.5 * d * d / (root * REFERENCE * size));
    put_slopes(net, link, g[link->number] * root * d, s, -s, column);
  }
  for (int l = 0; l < net->count[RADIATION]; l++) {
    const Link *link = &net->by_law[RADIATION][l];
    double a = temp[link->from], b = temp[link->to], k = g[link->number] * RADIATION_SCALE;
    put_slopes(net, link, k * (a * a + b * b) * (a + b) * (a - b), 4 * k * a * a * a, -4 * k * b * b * b, column);
  }
  for (int s = 0; s < net->sources; s++) {
    const Source *source = &net->source[s];
    if (source->senses < 0 || net->p[s] == 0) continue;
    double share = 1 / (1 + exp((temp[source->senses] - source->set_point) / source->width));
    column[source->senses][source->part] -=
        net->p[s] * share * (1 - share) / source->width * net->inverse[source->part];
  }
  if (net->varying == 0) return;
  balance(net);
  for (int v = 0; v < net->varying; v++) {
    int i = net->varying_part[v];
    double x = (temp[i] - FREEZING) / MELTING_WIDTH, slope = net->capacity_slope[i];
    if (net->latent[i] != 0)
      slope -= 2 * x * net->latent[i] / (MELTING_WIDTH * MELTING_WIDTH * SQRT_PI) * exp(-x * x);
    column[i][i] -= net->net[i] * slope * net->inverse[i] * net->inverse[i];
  }
}

/* ---- film factor ---- */

static double film(const Network *net, double temp, double *slope) {
  double position = (temp - net->film_from) * net->film_per_spacing;
  int i = position <= 0 ? 0 : position >= net->film_intervals ? net->film_intervals - 1 : (int)position;
  double s = position - i;
  const double *c = net->film_piece + 4 * i;
  if (slope != NULL) *slope = (c[1] + s * (2 * c[2] + 3 * s * c[3])) * net->film_per_spacing;
  return c[0] + s * (c[1] + s * (c[2] + s * c[3]));
}

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

/* ---- reading ---- */

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
