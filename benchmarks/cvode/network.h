/* A heat network as the benchmark writes it (problem-file.mjs): parts, links by law, sources, configurations, stretches. */
#ifndef NETWORK_H
#define NETWORK_H

typedef struct {
  int from, to;      /* rows in the table of all temperatures: parts, then inputs */
  int factor, wind;  /* rows of inputs, or -1 */
  int film;          /* 1 where the oil film factor applies */
  int number;        /* place among the conductances of a configuration */
} Link;

typedef struct {
  int part, senses;  /* senses -1: no limiter */
  double set_point, width;
} Source;

typedef struct {
  double from, to;
  int configuration;
  const double *inputs_from, *inputs_slope;
} Stretch;

enum { CONDUCTION, FREE_CONVECTION, VENTILATION, RADIATION, LAWS };

typedef struct {
  int parts, inputs, links, sources, configurations, stretches, samples;
  double *capacity, *capacity_slope, *latent;
  double *light; /* 1 for surfaces and air, which follow at once and may be taken less exactly */
  int varying, *varying_part; /* parts whose heat capacity depends on temperature */
  Link *by_law[LAWS];
  int count[LAWS];
  Source *source;
  double *conductance, *power; /* configurations x links, configurations x sources */
  Stretch *stretch;
  double *initial, *sample_time;
  /* Film factor (nu(50 C)/nu(T))^1/4 as cubic Hermite pieces, four coefficients an interval. */
  double film_from, film_per_spacing, *film_piece;
  int film_intervals;
  /* In force now. */
  const Stretch *now;
  const double *g, *p;
  double *temp, *net, *inverse;
} Network;

Network *network_read(const char *path);
void network_enter(Network *net, int stretch);
void network_derivative(Network *net, double t, const double *y, double *ydot);
/* Dense, column pointers, zeroed by the caller. */
void network_jacobian(Network *net, double t, const double *y, double **column);

#endif
