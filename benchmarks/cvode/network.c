/* Right-hand side and analytic Jacobian of a heat network: the same equations as src/thermal, one aircraft. */
#include "network.h"

#include <math.h>
#include <stddef.h>
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

/* Film factor of the oil and, where asked for, its slope; the end pieces go on outside the table. */
static double film(const Network *net, double temp, double *slope) {
  double position = (temp - net->film_from) * net->film_per_spacing;
  int i = position <= 0 ? 0 : position >= net->film_intervals ? net->film_intervals - 1 : (int)position;
  double s = position - i;
  const double *c = net->film_piece + 4 * i;
  if (slope != NULL) *slope = (c[1] + s * (2 * c[2] + 3 * s * c[3])) * net->film_per_spacing;
  return c[0] + s * (c[1] + s * (c[2] + s * c[3]));
}
