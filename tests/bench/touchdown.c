/*
 * Twin of the hot loop of engine/touchdown/advance.ts for feet that neither crush nor sink, on a plane, without thrust or hull: the same
 * arithmetic on the same arrays. tests/bench/touchdown.ts builds it when a compiler is there and compares time and result.
 *
 * Reads body, feet and run from standard input as doubles, steps `steps` times, writes body and then the nanoseconds per step.
 * Usage: touchdown steps feet footSize batches
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { PX = 0, VX = 3, QW = 6, LX = 10, AX = 13, MX = 16, BODY_SIZE = 28, RUN_SIZE = 25 };
enum { FX = 0, STRUT = 3, KN = 6, KT = 7, CN = 8, CT = 9, CRUSH = 10, LEVEL = 19, TOUCHING = 20, ANCHOR1 = 21, ANCHOR2 = 22 };
enum { UN = 23, U1 = 24, U2 = 25, LOAD = 26, PEAK_LOAD = 27, SLIDE = 28 };
enum { STEP = 0, FRICTION = 1, GX = 2, INVERSE_MASS = 5, INVERSE_IX = 6 };

static void turn(double t, double *qw, double *qx, double *qy, double *qz, double *p, double *q) {
  /* about the axis of qx; p, q the other two components of the angular momentum */
  double tt = t * t, u = 2 * tt * (1 - tt), c = 1 - u, s = t * (2 - u);
  double a = *qw - *qx * t, b = *qx + *qw * t, d = *qy + *qz * t, e = *qz - *qy * t;
  double f = c * *p + s * *q;
  *q = c * *q - s * *p;
  *p = f;
  *qw = a;
  *qx = b;
  *qy = d;
  *qz = e;
}

static void advance(double *body, double *feet, const double *run, long count, int feetEnd, int footSize) {
  const double h = run[STEP], half = h / 2, friction = run[FRICTION];
  const double gx = run[GX], gy = run[GX + 1], gz = run[GX + 2], inverseMass = run[INVERSE_MASS];
  const double turnX = run[INVERSE_IX] * h / 4, turnY = run[INVERSE_IX + 1] * h / 4, turnZ = run[INVERSE_IX + 2] * h / 2;
  double px = body[PX], py = body[PX + 1], pz = body[PX + 2], vx = body[VX], vy = body[VX + 1], vz = body[VX + 2];
  double qw = body[QW], qx = body[QW + 1], qy = body[QW + 2], qz = body[QW + 3];
  double lx = body[LX], ly = body[LX + 1], lz = body[LX + 2];
  double ax = body[AX], ay = body[AX + 1], az = body[AX + 2], mx = body[MX], my = body[MX + 1], mz = body[MX + 2];
  double peak = 0;
  for (long n = 0; n < count; n++) {
    vx += ax * half;
    vy += ay * half;
    vz += az * half;
    lx += mx * half;
    ly += my * half;
    lz += mz * half;
    px += vx * h;
    py += vy * h;
    pz += vz * h;
    turn(lx * turnX, &qw, &qx, &qy, &qz, &ly, &lz);
    turn(ly * turnY, &qw, &qy, &qz, &qx, &lz, &lx);
    turn(lz * turnZ, &qw, &qz, &qx, &qy, &lx, &ly);
    turn(ly * turnY, &qw, &qy, &qz, &qx, &lz, &lx);
    turn(lx * turnX, &qw, &qx, &qy, &qz, &ly, &lz);
    double s = 1 / sqrt(qw * qw + qx * qx + qy * qy + qz * qz);
    qw *= s;
    qx *= s;
    qy *= s;
    qz *= s;
    const double xx = qx * qx, yy = qy * qy, zz = qz * qz;
    const double r11 = 1 - 2 * (yy + zz), r12 = 2 * (qx * qy - qw * qz), r13 = 2 * (qx * qz + qw * qy);
    const double r21 = 2 * (qx * qy + qw * qz), r22 = 1 - 2 * (xx + zz), r23 = 2 * (qy * qz - qw * qx);
    const double r31 = 2 * (qx * qz - qw * qy), r32 = 2 * (qy * qz + qw * qx), r33 = 1 - 2 * (xx + yy);
    double fx = 0, fy = 0, fz = 0, tx = 0, ty = 0, tz = 0;
    for (double *o = feet; o < feet + feetEnd; o += footSize) {
      const double bx = o[FX], by = o[FX + 1], bz = o[FX + 2];
      const double rz = r31 * bx + r32 * by + r33 * bz;
      const double un = o[LEVEL] - (pz + rz), unBefore = o[UN];
      if (un <= 0 || o[TOUCHING] == 0) {
        /* the bench keeps all feet on the ground: what begins and ends contacts is not here */
        o[UN] = un;
        continue;
      }
      const double rx = r11 * bx + r12 * by + r13 * bz, ry = r21 * bx + r22 * by + r23 * bz;
      const double at1 = px + rx, at2 = py + ry;
      const double kn = o[KN], kt = o[KT], cn = o[CN], ct = o[CT];
      const double u1 = o[ANCHOR1] - at1, u2 = o[ANCHOR2] - at2, u1Before = o[U1], u2Before = o[U2];
      const double normal = kn * un + cn * (un - unBefore);
      if (normal <= 0) {
        o[UN] = un;
        continue;
      }
      const double trial1 = kt * u1 + ct * (u1 - u1Before), trial2 = kt * u2 + ct * (u2 - u2Before);
      const double across = trial1 * trial1 + trial2 * trial2, limit = friction * normal;
      double force1 = trial1, force2 = trial2, slip = 0;
      if (across > limit * limit) {
        const double length = sqrt(across);
        force1 = trial1 * limit / length;
        force2 = trial2 * limit / length;
        slip = (length - limit) / (kt + ct);
      }
      const double cx = o[STRUT], cy = o[STRUT + 1], cz = o[STRUT + 2];
      const double a1 = r11 * cx + r12 * cy + r13 * cz, a2 = r21 * cx + r22 * cy + r23 * cz, an = r31 * cx + r32 * cy + r33 * cz;
      const double load = normal * an + force1 * a1 + force2 * a2;
      if (load > o[CRUSH]) exit(3);
      o[UN] = un;
      if (slip > 0) {
        o[U1] = (force1 + ct * u1Before) / (kt + ct);
        o[U2] = (force2 + ct * u2Before) / (kt + ct);
        o[ANCHOR1] = at1 + o[U1];
        o[ANCHOR2] = at2 + o[U2];
        o[SLIDE] += slip;
      } else {
        o[U1] = u1;
        o[U2] = u2;
      }
      o[LOAD] = load;
      if (load > o[PEAK_LOAD]) o[PEAK_LOAD] = load;
      fx += force1;
      fy += force2;
      fz += normal;
      tx += ry * normal - rz * force2;
      ty += rz * force1 - rx * normal;
      tz += rx * force2 - ry * force1;
    }
    ax = fx * inverseMass;
    ay = fy * inverseMass;
    az = fz * inverseMass;
    const double square = ax * ax + ay * ay + az * az;
    if (square > peak) peak = square;
    mx = r11 * tx + r21 * ty + r31 * tz;
    my = r12 * tx + r22 * ty + r32 * tz;
    mz = r13 * tx + r23 * ty + r33 * tz;
    ax += gx;
    ay += gy;
    az += gz;
    vx += ax * half;
    vy += ay * half;
    vz += az * half;
    lx += mx * half;
    ly += my * half;
    lz += mz * half;
  }
  body[PX] = px, body[PX + 1] = py, body[PX + 2] = pz, body[VX] = vx, body[VX + 1] = vy, body[VX + 2] = vz;
  body[QW] = qw, body[QW + 1] = qx, body[QW + 2] = qy, body[QW + 3] = qz;
  body[LX] = lx, body[LX + 1] = ly, body[LX + 2] = lz;
  body[AX] = ax, body[AX + 1] = ay, body[AX + 2] = az, body[MX] = mx, body[MX + 1] = my, body[MX + 2] = mz;
  if (peak < 0) exit(4);
}

int main(int argc, char **argv) {
  if (argc != 5) return 2;
  const long steps = atol(argv[1]);
  const int feetEnd = atoi(argv[2]), footSize = atoi(argv[3]), batches = atoi(argv[4]);
  double body[BODY_SIZE], run[RUN_SIZE], body0[BODY_SIZE];
  double *feet = malloc(sizeof(double) * feetEnd), *feet0 = malloc(sizeof(double) * feetEnd);
  if (fread(body0, sizeof(double), BODY_SIZE, stdin) != BODY_SIZE) return 2;
  if (fread(feet0, sizeof(double), feetEnd, stdin) != (size_t)feetEnd) return 2;
  if (fread(run, sizeof(double), RUN_SIZE, stdin) != RUN_SIZE) return 2;
  double best = 1e18;
  for (int batch = 0; batch < batches; batch++) {
    memcpy(body, body0, sizeof body);
    memcpy(feet, feet0, sizeof(double) * feetEnd);
    struct timespec a, b;
    clock_gettime(CLOCK_MONOTONIC, &a);
    advance(body, feet, run, steps, feetEnd, footSize);
    clock_gettime(CLOCK_MONOTONIC, &b);
    const double ns = ((b.tv_sec - a.tv_sec) * 1e9 + (b.tv_nsec - a.tv_nsec)) / steps;
    if (ns < best) best = ns;
  }
  fwrite(body, sizeof(double), BODY_SIZE, stdout);
  fwrite(&best, sizeof(double), 1, stdout);
  return 0;
}
