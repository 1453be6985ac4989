/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/key.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/clamp-layout.h"
#include "draw/defects.h"
#include "draw/lettering.h"
#include "draw/marks.h"
#include "words/words.h"

typedef enum
{
  SIGN_TOP_EDGE,
  SIGN_LEFT_END,
  SIGN_RUN_OUT,
  SIGN_HEART,
  SIGN_NO_PITH,
  SIGN_FINISHED,
  SIGN_TOUCH,
  SIGN_CLAMP_ABOVE,
  SIGN_CLAMP_BELOW,
  SIGN_CAUTION,
  SIGN_STOP,
  N_SIGNS,
} Sign;

static const char *const sign_words[N_SIGNS] = {
  [SIGN_TOP_EDGE] = N_ ("edge that was on top when marked"),
  [SIGN_LEFT_END] = N_ ("end that was the left one when marked"),
  [SIGN_RUN_OUT] = N_ ("plane this way"),
  [SIGN_HEART] = N_ ("heart on the side of the dot"),
  [SIGN_NO_PITH] = N_ ("growth rings not known"),
  [SIGN_FINISHED] = N_ ("faces when flat"),
  [SIGN_TOUCH] = N_ ("spot that decides the thickness, with its distance from the left end"),
  [SIGN_CLAMP_ABOVE] = N_ ("clamp above"),
  [SIGN_CLAMP_BELOW] = N_ ("clamp below"),
  [SIGN_CAUTION] = N_ ("take care: see the findings"),
  [SIGN_STOP] = N_ ("do not start like this: see the findings"),
};

typedef struct
{
  cairo_t *cr;
  double width, size;
  gboolean is_drawn;
  double x, y, line_height;
} Pen;

static void
draw_lines (cairo_t *cr, Sign sign, double size)
{
  double dashes[] = { 4.0, 1.2, 1.0, 1.2 };

  cairo_set_line_width (cr, 0.6);
  if (sign == SIGN_FINISHED)
    {
      cairo_set_dash (cr, dashes, 4, 0.0);
      cairo_move_to (cr, 0.0, 0.5 * size);
      cairo_line_to (cr, 1.6 * size, 0.5 * size);
    }
  for (int i = 0; sign == SIGN_NO_PITH && i < 4; i++)
    {
      cairo_move_to (cr, 0.3 * i * size, size);
      cairo_line_to (cr, 0.3 * (i + 2) * size, 0.1 * size);
    }
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0.0);
}

static void
draw_sign (cairo_t *cr, Sign sign, double size)
{
  const BsPalette *paper = bs_palette_paper ();
  double middle = 0.5 * size;

  bs_color_set (&paper->ink, cr);
  cairo_set_line_width (cr, 0.6);
  switch (sign)
    {
    case SIGN_TOP_EDGE:
      bs_mark_top_edge (cr, middle, middle, 0.8 * size, TRUE, &paper->ink);
      break;
    case SIGN_LEFT_END:
      bs_mark_left_end (cr, middle, middle, 0.9 * size, &paper->ink);
      break;
    case SIGN_RUN_OUT:
      bs_mark_run_out (cr, middle, 0.0, 1.1 * size, 0.7 * size, 1.0, &paper->ink);
      break;
    case SIGN_HEART:
      bs_mark_heart (cr, middle, middle, size, 1, &paper->ink);
      break;
    case SIGN_TOUCH:
      bs_mark_top_edge (cr, middle, middle, 0.6 * size, FALSE, &paper->ink);
      break;
    case SIGN_CLAMP_ABOVE:
      cairo_rectangle (cr, middle - 0.2 * size, 0.1 * size, 0.4 * size, 0.8 * size);
      cairo_fill (cr);
      break;
    case SIGN_CLAMP_BELOW:
      cairo_rectangle (cr, middle - 0.2 * size, 0.1 * size, 0.4 * size, 0.8 * size);
      cairo_stroke (cr);
      break;
    case SIGN_CAUTION:
    case SIGN_STOP:
      bs_mark_finding (cr, middle, middle, size,
                       sign == SIGN_STOP ? BS_SEVERITY_STOP : BS_SEVERITY_CAUTION, &paper->ink,
                       &paper->ground);
      break;
    default:
      draw_lines (cr, sign, size);
      break;
    }
}

/* Makes room for one entry and moves on. The origin of cr is left at the entry's sign. */
static void
add_entry (Pen *pen, const char *words, void (*draw) (cairo_t *, int, double), int which)
{
  double sign_room = 2.0 * pen->size, width, height;
  BsLettering style = { .size = pen->size, .wrap = pen->width - sign_room };

  bs_lettering_measure (pen->cr, words, &style, &width, &height);
  if (pen->x > 0.0 && pen->x + sign_room + width > pen->width)
    {
      pen->x = 0.0;
      pen->y += pen->line_height;
      pen->line_height = 0.0;
    }
  if (pen->is_drawn)
    {
      cairo_save (pen->cr);
      cairo_translate (pen->cr, pen->x + 0.15 * pen->size, pen->y + 0.12 * pen->size);
      draw (pen->cr, which, pen->size);
      cairo_restore (pen->cr);
      bs_color_set (&bs_palette_paper ()->ink, pen->cr);
      bs_lettering_draw (pen->cr, words, &style, pen->x + sign_room, pen->y, 0.0, 0.0);
    }
  pen->x += sign_room + width + 1.6 * pen->size;
  pen->line_height = MAX (pen->line_height, height + 0.25 * pen->size);
}

static void
draw_sign_entry (cairo_t *cr, int which, double size)
{
  draw_sign (cr, (Sign)which, size);
}

static void
draw_defect_entry (cairo_t *cr, int which, double size)
{
  bs_defect_draw (cr, (BsDefectKind)which, 1.5, 0.0, 0.0, 1.4 * size, size, 0.5,
                  &bs_palette_paper ()->ink);
}

/* Which signs and which defects the pictures of these results show. */
static void
find_used (const BsResults *results, gboolean *signs, gboolean *defects)
{
  const BsStack *stack = results->stack;

  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      const GArray *marked = placed->lamination->defects;
      BsMark marks = bs_marks_from_findings (results, (int)i);

      signs[SIGN_TOP_EDGE] = signs[SIGN_LEFT_END] = TRUE;
      signs[SIGN_RUN_OUT] |= placed->run_out_top != 0;
      signs[SIGN_HEART] |= placed->heart_side != 0;
      signs[SIGN_NO_PITH] |= !isfinite (placed->pith_y) || !isfinite (placed->pith_z);
      signs[SIGN_CAUTION] |= (marks & BS_MARK_CAUTION) != 0;
      signs[SIGN_STOP] |= (marks & BS_MARK_STOP) != 0;
      for (guint j = 0; j < marked->len; j++)
        {
          BsPlacedDefect at = bs_placed_defect (placed, &g_array_index (marked, BsDefect, j));

          defects[at.defect->kind] |= at.face == BS_FACE_TOP;
        }
    }
  signs[SIGN_FINISHED] = isfinite (results->flatten.thickness);
  signs[SIGN_TOUCH] = results->flatten.n_touches > 0;
  for (guint i = 0; i < results->set_clamps->len; i++)
    signs[g_array_index (results->set_clamps, BsLayoutClamp, i).is_above ? SIGN_CLAMP_ABOVE
                                                                         : SIGN_CLAMP_BELOW]
        = TRUE;
}

double
bs_key_draw (cairo_t *cr, const BsResults *results, double width, double text_size,
             gboolean is_drawn)
{
  gboolean signs[N_SIGNS] = { FALSE }, defects[BS_N_DEFECT_KINDS] = { FALSE };
  Pen pen = { .cr = cr, .width = width, .size = text_size, .is_drawn = is_drawn };

  find_used (results, signs, defects);
  for (int i = 0; i < N_SIGNS; i++)
    if (signs[i])
      add_entry (&pen, _ (sign_words[i]), draw_sign_entry, i);
  for (int i = 0; i < BS_N_DEFECT_KINDS; i++)
    if (defects[i])
      add_entry (&pen, bs_words_defect ((BsDefectKind)i), draw_defect_entry, i);
  return pen.y + pen.line_height;
}
