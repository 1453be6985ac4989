/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/pressing.h"

#include <stdio.h>
#include <string.h>

/* Reads stacks as lines of words and numbers, and prints the pressures: our side of the checks
 * against finite elements.
 *
 *   model squeeze|timoshenko        step MM
 *   piece COURSE START LENGTH THICKNESS HEIGHT E_ALONG E_ACROSS SHEAR BOW IS_CAUL
 *   clamp X FORCE HEAD
 *   solve
 *
 * `solve` prints "line N" and a row "x pressure opening" for each point, then "done MICROSECONDS"
 * with the time from nothing, and forgets the stack. */

typedef struct
{
  BsPressStack stack;
  GArray *pieces, *clamps;
} Job;

static void
start (Job *job)
{
  job->stack = bs_press_stack_default ();
  g_array_set_size (job->pieces, 0);
  g_array_set_size (job->clamps, 0);
}

static void
print_result (const BsPressResult *result, gint64 microseconds)
{
  for (guint i = 0; i < result->n_lines; i++)
    {
      printf ("line %u\n", i);
      for (guint j = 0; j < result->lines[i].n_points; j++)
        printf ("%.17g %.17g %.17g\n", result->lines[i].points[j].x,
                result->lines[i].points[j].pressure_mpa, result->lines[i].points[j].opening);
    }
  printf ("done %" G_GINT64_FORMAT "\n", microseconds);
}

static gboolean
solve (Job *job)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPressing) pressing = NULL;
  g_auto (BsPressResult) result = { 0 };
  gint64 begun = g_get_monotonic_time ();

  job->stack.pieces = (const BsPressPiece *)(void *)job->pieces->data;
  job->stack.n_pieces = job->pieces->len;
  pressing = bs_pressing_new (&job->stack, &error);
  if (pressing == NULL
      || !bs_pressing_solve (pressing, (const BsPressClamp *)(void *)job->clamps->data,
                             job->clamps->len, &result, &error))
    {
      g_printerr ("%s\n", error->message);
      return FALSE;
    }
  if (result.status != BS_PRESS_STATUS_SOLVED)
    {
      g_printerr ("not settled\n");
      return FALSE;
    }
  print_result (&result, g_get_monotonic_time () - begun);
  return TRUE;
}

static gboolean
read_line (Job *job, char *text)
{
  BsPressPiece piece = { 0 };
  BsPressClamp clamp = { 0 };
  char word[16];

  if (sscanf (text, "model %15s", word) == 1)
    {
      job->stack.model
          = strcmp (word, "squeeze") == 0 ? BS_PRESS_MODEL_SQUEEZE : BS_PRESS_MODEL_TIMOSHENKO;
      return TRUE;
    }
  if (sscanf (text, "step %lf", &job->stack.step) == 1)
    return TRUE;
  if (sscanf (text, "piece %u %lf %lf %lf %lf %lf %lf %lf %lf %d", &piece.course, &piece.start,
              &piece.length, &piece.thickness, &piece.height, &piece.e_along_mpa,
              &piece.e_across_mpa, &piece.shear_mpa, &piece.bow, &piece.is_caul)
      == 10)
    {
      g_array_append_val (job->pieces, piece);
      return TRUE;
    }
  if (sscanf (text, "clamp %lf %lf %lf", &clamp.x, &clamp.force, &clamp.head) == 3)
    {
      g_array_append_val (job->clamps, clamp);
      return TRUE;
    }
  g_printerr ("not understood: %s", text);
  return FALSE;
}

int
main (void)
{
  Job job = { .pieces = g_array_new (FALSE, FALSE, sizeof (BsPressPiece)),
              .clamps = g_array_new (FALSE, FALSE, sizeof (BsPressClamp)) };
  char text[256];
  gboolean is_fine = TRUE;

  start (&job);
  while (is_fine && fgets (text, sizeof text, stdin) != NULL)
    {
      if (strcmp (text, "solve\n") != 0)
        {
          is_fine = read_line (&job, text);
          continue;
        }
      is_fine = solve (&job);
      start (&job);
    }
  g_array_unref (job.pieces);
  g_array_unref (job.clamps);
  return is_fine ? 0 : 1;
}
