/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdlib.h>

#include "draw/picture.h"
#include "draw/scene.h"
#include "draw/sheet.h"

/* Medians of drawing on 1600 x 1000 pixels in memory: the whole pictures; of one lamination, which
 * is what a canvas draws once and keeps; what has to be drawn anew while one is held; and the
 * paper. */

#define RUNS 15
#define WIDTH 1600
#define HEIGHT 1000

typedef struct
{
  BsResults *results;
  cairo_t *cr;
  BsScale section, face;
} Scene;

static void
draw_pictures (Scene *scene)
{
  bs_draw_section_picture (scene->cr, scene->results, &scene->section, bs_palette_light ());
  bs_draw_face_picture (scene->cr, scene->results, &scene->face, bs_palette_light ());
}

static void
draw_ends (Scene *scene)
{
  for (guint i = 0; i < scene->results->stack->n; i++)
    bs_draw_end (scene->cr, &scene->results->stack->placed[i], &scene->section, bs_palette_light (),
                 BS_MARK_NONE);
}

static void
draw_faces (Scene *scene)
{
  for (guint i = 0; i < scene->results->stack->n; i++)
    bs_draw_face (scene->cr, &scene->results->stack->placed[i], &scene->face, bs_palette_light (),
                  BS_MARK_NONE);
}

static void
draw_rest (Scene *scene)
{
  bs_draw_finished_faces (scene->cr, scene->results, &scene->section, bs_palette_light ());
  bs_draw_dimensions (scene->cr, scene->results, &scene->section, bs_palette_light ());
  bs_draw_surroundings (scene->cr, scene->results, &scene->face, bs_palette_light ());
  bs_draw_tape (scene->cr, scene->results, &scene->face, bs_palette_light ());
}

static void
make_sheet (Scene *scene)
{
  BsSheetOptions options = { .width = 770.0, .height = 523.0 };
  g_autoptr (BsSheet) sheet = bs_sheet_new (scene->results, &options);

  for (guint page = 0; page < bs_sheet_get_n_pages (sheet); page++)
    bs_sheet_draw_page (sheet, page, scene->cr);
}

static int
compare_times (const void *a, const void *b)
{
  gint64 x = *(const gint64 *)a, y = *(const gint64 *)b;

  return (x > y) - (x < y);
}

static double
find_median_ms (void (*work) (Scene *), Scene *scene)
{
  gint64 times[RUNS], median;

  work (scene); /* fonts are loaded once */
  for (int i = 0; i < RUNS; i++)
    {
      gint64 start = g_get_monotonic_time ();

      work (scene);
      cairo_surface_flush (cairo_get_target (scene->cr));
      times[i] = g_get_monotonic_time () - start;
    }
  qsort (times, RUNS, sizeof *times, compare_times);
  median = times[RUNS / 2];
  return (double)median / 1000.0;
}

static void
measure (int n)
{
  g_autoptr (BsPlan) plan = scene_new_plan (n, BS_LAYUP_ON_EDGE);
  g_autoptr (BsResults) results = bs_evaluate (plan);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  Scene scene = { .results = results, .cr = cairo_create (surface) };

  bs_scale_fit (&scene.section, &scene.face, results->stack, WIDTH, HEIGHT, 13.0, 1.0);
  g_print ("%2d laminations: both pictures %.1f ms, one end %.3f ms, one face %.3f ms, "
           "all but the laminations %.2f ms, all pages of the diagram %.0f ms\n",
           n, find_median_ms (draw_pictures, &scene), find_median_ms (draw_ends, &scene) / n,
           find_median_ms (draw_faces, &scene) / n, find_median_ms (draw_rest, &scene),
           find_median_ms (make_sheet, &scene));
  cairo_destroy (scene.cr);
  cairo_surface_destroy (surface);
}

int
main (void)
{
  g_print ("drawing on %d x %d, medians of %d runs, %u processors\n", WIDTH, HEIGHT, RUNS,
           g_get_num_processors ());
  measure (5);
  measure (16);
  measure (60);
  return 0;
}
