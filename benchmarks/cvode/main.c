/*
 * CVODE (BDF, Newton, dense LU, analytic Jacobian) on one heat network, for benchmarks/run.mjs.
 *   cvode PROBLEM reference OUT                               writes the samples of a tight run to OUT as doubles
 *   cvode PROBLEM errors OUT KNOTS ORDER LIGHT TOLERANCE...   prints the greatest difference from OUT [K] at each
 *   cvode PROBLEM time SECONDS KNOTS ORDER LIGHT TOLERANCE    repeats a run for SECONDS: median CPU time [ms], steps,
 *                                                             derivatives, Jacobians, factorisations
 * KNOTS is what happens at a weather knot, where only the slope of the inputs jumps:
 *   restart  starts afresh there, as at a switching
 *   stop     ends a step there but goes on with the history
 *   pass     steps over it
 * At switchings the history is of no use and every way starts afresh.
 * ORDER is the highest order allowed, 1 to 5.
 * LIGHT multiplies the absolute tolerance [K] of the parts that the problem calls light.
 */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <time.h>

#include "network.h"

#define RELATIVE_TOLERANCE 1e-10
#define TIGHT_TOLERANCE 1e-8

typedef enum { RESTART, STOP, PASS } AtKnots;

typedef struct {
  AtKnots at_knots;
  int order;
  double light, tolerance;
} Way;

typedef struct {
  Network *net;
  void *cvode;
  N_Vector state, tolerance;
  double *samples;
  int stretch;     /* the one in force */
  int first, last; /* stretches that may be asked for now */
  long steps, derivatives, jacobians, factorisations;
} Run;

static void fail(const char *what, const char *which) {
  fprintf(stderr, "%s: %s\n", what, which);
  exit(2);
}

static void must(int flag, const char *what) {
  if (flag >= 0) return;
  fprintf(stderr, "%s returned %d\n", what, flag);
  exit(3);
}

/* Takes up the stretch that holds t; it changes within a step only where knots are passed. */
static void enter_at(Run *run, double t) {
  Network *net = run->net;
  int s = run->stretch;
  while (s < run->last && t > net->stretch[s].to) s++;
  while (s > run->first && t < net->stretch[s].from) s--;
  if (s != run->stretch) network_enter(net, run->stretch = s);
}

static int derivative(realtype t, N_Vector y, N_Vector ydot, void *user) {
  Run *run = user;
  enter_at(run, t);
  network_derivative(run->net, t, NV_DATA_S(y), NV_DATA_S(ydot));
  return 0;
}

static int jacobian(realtype t, N_Vector y, N_Vector fy, SUNMatrix j, void *user, N_Vector a, N_Vector b, N_Vector c) {
  (void)fy, (void)a, (void)b, (void)c;
  Run *run = user;
  enter_at(run, t);
  network_jacobian(run->net, t, NV_DATA_S(y), SM_COLS_D(j)); /* CVODE hands it over zeroed */
  return 0;
}

/* Adds the counts since the last start, which the next start clears. */
static void count(Run *run) {
  long n = 0;
  CVodeGetNumSteps(run->cvode, &n), run->steps += n;
  CVodeGetNumRhsEvals(run->cvode, &n), run->derivatives += n;
  CVodeGetNumJacEvals(run->cvode, &n), run->jacobians += n;
  CVodeGetNumLinSolvSetups(run->cvode, &n), run->factorisations += n;
}

static void integrate(Run *run, Way way) {
  Network *net = run->net;
  double *y = NV_DATA_S(run->state), t = net->stretch[0].from;
  size_t bytes = net->parts * sizeof(double);
  int sample = 0;
  run->steps = run->derivatives = run->jacobians = run->factorisations = 0;
  memcpy(y, net->initial, bytes);
  for (int i = 0; i < net->parts; i++)
    NV_Ith_S(run->tolerance, i) = way.tolerance * (net->light[i] ? way.light : 1);
  must(CVodeSetMaxOrd(run->cvode, way.order), "CVodeSetMaxOrd");
  must(CVodeSVtolerances(run->cvode, RELATIVE_TOLERANCE, run->tolerance), "CVodeSVtolerances");
  if (sample < net->samples && net->sample_time[sample] <= t) memcpy(run->samples + net->parts * sample++, y, bytes);
  for (int s = 0, next; s < net->stretches; s = next) {
    /* Stretches s to next - 1 share one start. */
    for (next = s + 1; way.at_knots != RESTART && next < net->stretches; next++)
      if (net->stretch[next].configuration != net->stretch[s].configuration) break;
    run->stretch = run->first = s;
    run->last = next - 1;
    network_enter(net, s);
    must(CVodeReInit(run->cvode, t, run->state), "CVodeReInit");
    for (int stop = way.at_knots == STOP ? s : next - 1; stop < next; stop++) {
      double end = net->stretch[stop].to;
      must(CVodeSetStopTime(run->cvode, end), "CVodeSetStopTime");
      while (sample < net->samples && net->sample_time[sample] <= end) {
        must(CVode(run->cvode, net->sample_time[sample], run->state, &t, CV_NORMAL), "CVode");
        memcpy(run->samples + net->parts * sample++, y, bytes);
      }
      if (t < end) must(CVode(run->cvode, end, run->state, &t, CV_NORMAL), "CVode");
    }
    count(run);
  }
}

static double now(void) {
  struct timespec at;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
  return at.tv_sec + 1e-9 * at.tv_nsec;
}

static int ascending(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

static double median_time(Run *run, Way way, double seconds) {
  enum { MOST = 1000000 };
  double *times = malloc(MOST * sizeof(double));
  int n = 0;
  for (double start = now(); now() - start < 0.2 * seconds;) integrate(run, way);
  for (double start = now(); n < MOST && now() - start < seconds; n++) {
    double before = now();
    integrate(run, way);
    times[n] = now() - before;
  }
  qsort(times, n, sizeof(double), ascending);
  double median = times[n / 2];
  free(times);
  return median;
}

static Way way_of(char **named, const char *tolerance) {
  const char *at_knots = named[0];
  Way way = {.order = atoi(named[1]), .light = atof(named[2]), .tolerance = atof(tolerance)};
  if (strcmp(at_knots, "restart") == 0) way.at_knots = RESTART;
  else if (strcmp(at_knots, "stop") == 0) way.at_knots = STOP;
  else if (strcmp(at_knots, "pass") == 0) way.at_knots = PASS;
  else fail("unknown KNOTS", at_knots);
  if (!(way.light > 0 && way.tolerance > 0)) fail("LIGHT and TOLERANCE must be above 0", tolerance);
  if (way.order < 1 || way.order > 5) fail("ORDER must be 1 to 5", named[1]);
  return way;
}

int main(int argc, char **argv) {
  if (argc < 4) fail("missing arguments", "cvode PROBLEM reference|errors|time ...");
  const char *task = argv[2];
  Run run = {.net = network_read(argv[1])};
  Network *net = run.net;
  size_t total = (size_t)net->parts * net->samples;
  run.samples = calloc(total, sizeof(double));

  SUNContext context;
  must(SUNContext_Create(NULL, &context), "SUNContext_Create");
  run.state = N_VNew_Serial(net->parts, context);
  run.tolerance = N_VNew_Serial(net->parts, context);
  memcpy(NV_DATA_S(run.state), net->initial, net->parts * sizeof(double));
  SUNMatrix matrix = SUNDenseMatrix(net->parts, net->parts, context);
  SUNLinearSolver solver = SUNLinSol_Dense(run.state, matrix, context);
  run.cvode = CVodeCreate(CV_BDF, context);
  must(CVodeInit(run.cvode, derivative, net->stretch[0].from, run.state), "CVodeInit");
  must(CVodeSStolerances(run.cvode, RELATIVE_TOLERANCE, TIGHT_TOLERANCE), "CVodeSStolerances");
  must(CVodeSetUserData(run.cvode, &run), "CVodeSetUserData");
  must(CVodeSetMaxNumSteps(run.cvode, 1000000), "CVodeSetMaxNumSteps");
  must(CVodeSetLinearSolver(run.cvode, solver, matrix), "CVodeSetLinearSolver");
  must(CVodeSetJacFn(run.cvode, jacobian), "CVodeSetJacFn");

  if (strcmp(task, "reference") == 0) {
    integrate(&run, (Way){RESTART, 5, 1, TIGHT_TOLERANCE});
    FILE *out = fopen(argv[3], "wb");
    if (out == NULL || fwrite(run.samples, sizeof(double), total, out) != total || fclose(out) != 0)
      fail("cannot write", argv[3]);
  } else if (strcmp(task, "errors") == 0 && argc > 7) {
    double *reference = malloc(total * sizeof(double));
    FILE *in = fopen(argv[3], "rb");
    if (in == NULL || fread(reference, sizeof(double), total, in) != total) fail("cannot read", argv[3]);
    for (int k = 7; k < argc; k++) {
      double worst = 0;
      integrate(&run, way_of(argv + 4, argv[k]));
      for (size_t i = 0; i < total; i++) worst = fmax(worst, fabs(run.samples[i] - reference[i]));
      printf("%.9g\n", worst);
    }
  } else if (strcmp(task, "time") == 0 && argc == 8) {
    double time = median_time(&run, way_of(argv + 4, argv[7]), atof(argv[3]));
    printf("%.9g %ld %ld %ld %ld\n", 1000 * time, run.steps, run.derivatives, run.jacobians, run.factorisations);
  } else {
    fail("unknown task or wrong number of arguments", task);
  }
  return 0;
}
