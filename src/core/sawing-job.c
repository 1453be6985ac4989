/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-job.h"

#include "core/cutting.h"
#include "core/sawing-rack.h"
#include "core/sawing-stock.h"
#include "core/text.h"

#include <math.h>
#include <string.h>

#define NO_WISH G_MAXUINT

/* Steps of a quick search, which tells its progress at each: enough to prove most orders of a dozen
 * boards and 30 pieces. */
#define QUICK_STEPS 40

/* A plan as a problem of cutting. Parts: first each kept cut, in its own size, then each wish that
 * has something left to place on some board. */
typedef struct
{
  const BsPlan *plan;
  GArray *wishes;
  GArray *stock;      /* BsCutStock: the plan's boards */
  GPtrArray *defects; /* GArray of each */
  double *straighten; /* of each, off its front edge */
  GArray *parts;      /* BsCutPart */
  GArray *pins;       /* BsCutPin: the first n_kept parts */
  GArray *kept;       /* guint: their cuts in the plan */
  GArray *wish_of;    /* guint, of each part; NO_WISH for kept cuts */
  gboolean *suits;
  BsCutting cutting;
} Job;

static const BsCut *
get_cut (const Job *self, guint i)
{
  return &g_array_index (self->plan->cuts, BsCut, i);
}

static int
find_board (const BsPlan *plan, const char *id)
{
  for (guint i = 0; i < plan->boards->len; i++)
    if (g_str_equal (((const BsBoard *)plan->boards->pdata[i])->id, id))
      return (int)i;
  return -1;
}

static void
keep_cuts (Job *self, gboolean keeps_all)
{
  for (guint i = 0; i < self->plan->cuts->len; i++)
    {
      const BsCut *cut = get_cut (self, i);
      int board = find_board (self->plan, cut->board);
      const BsCutPart part = { .length = cut->length, .width = cut->width, .quantity = 1 };
      const BsCutPin pin
          = { .stock = (guint)board, .part = self->parts->len, .x = cut->x, .y = cut->y };
      guint none = NO_WISH;

      if (board < 0 || !(keeps_all || cut->is_pinned || cut->is_cut))
        continue;
      g_array_append_val (self->parts, part);
      g_array_append_val (self->pins, pin);
      g_array_append_val (self->kept, i);
      g_array_append_val (self->wish_of, none);
    }
}

static int
count_kept (const Job *self, const char *piece)
{
  int n = 0;

  for (guint i = 0; i < self->kept->len; i++)
    n += g_strcmp0 (get_cut (self, g_array_index (self->kept, guint, i))->piece, piece) == 0;
  return n;
}

/* Parts that no board can hold would be refused by the search; they have no place, and why is told
 * by bs_saw_lack (). */
static void
add_wishes (Job *self)
{
  for (guint i = 0; i < self->wishes->len; i++)
    {
      const BsSawWish *wish = &g_array_index (self->wishes, BsSawWish, i);
      const BsCutPart part = {
        .length = wish->rough_length,
        .width = wish->rough_width,
        .quantity = wish->count - count_kept (self, wish->id),
        .clear_faces = wish->clear_faces,
        .clear_edges = wish->clear_edges,
        .is_on_show = wish->is_on_show,
      };

      if (part.quantity <= 0 || bs_saw_lack (self->plan, wish).kind != BS_SAW_LACK_NONE)
        continue;
      g_array_append_val (self->parts, part);
      g_array_append_val (self->wish_of, i);
    }
}

static gboolean *
get_suits (const Job *self, guint board, guint part)
{
  return &self->suits[board * self->parts->len + part];
}

static void
find_suits (Job *self)
{
  guint n = self->parts->len;

  self->suits = g_new0 (gboolean, self->plan->boards->len * n + 1);
  for (guint i = 0; i < self->plan->boards->len; i++)
    for (guint p = 0; p < n; p++)
      {
        guint wish = g_array_index (self->wish_of, guint, p);

        *get_suits (self, i, p)
            = wish == NO_WISH
              || bs_saw_board_lack (self->plan, self->plan->boards->pdata[i],
                                    &g_array_index (self->wishes, BsSawWish, wish))
                         .kind
                     == BS_SAW_LACK_NONE;
      }
}

/* What a part would have the front edge of a board straightened by. */
static double
straighten_for (const Job *self, guint board, guint part)
{
  return bs_saw_round_up (self->plan->units,
                          bs_saw_straighten (self->plan, self->plan->boards->pdata[board],
                                             g_array_index (self->parts, BsCutPart, part).length));
}

/* The front edge is made straight first, by what the longest piece that the board may give needs;
 * a kept cut knows better. */
static double
find_straighten (const Job *self, guint board)
{
  double straighten = 0.0;

  for (guint p = self->kept->len; p < self->parts->len; p++)
    if (*get_suits (self, board, p))
      straighten = fmax (straighten, straighten_for (self, board, p));
  for (guint k = 0; k < self->pins->len; k++)
    {
      const BsCutPin *pin = &g_array_index (self->pins, BsCutPin, k);
      if (pin->stock == board)
        straighten = fmin (straighten, pin->y);
    }
  return fmax (straighten, 0.0);
}

/* With its edge straight, a board may have become too narrow for a part that is short and wide. */
static gboolean
is_wide_enough (const Job *self, guint board, guint part)
{
  const BsPlan *plan = self->plan;
  double trims = 2.0 * bs_saw_round_up (plan->units, plan->shop.saw.edge_trim);

  return g_array_index (self->parts, BsCutPart, part).width
         <= ((const BsBoard *)plan->boards->pdata[board])->width - self->straighten[board] - trims;
}

/* A part that no straightened board takes gets one that is straightened for its own length alone;
 * longer ones then come from other boards. */
static void
save_part (Job *self, guint part)
{
  for (guint i = 0; i < self->plan->boards->len; i++)
    {
      double straighten = straighten_for (self, i, part);

      if (!*get_suits (self, i, part) || straighten >= self->straighten[i])
        continue;
      self->straighten[i] = straighten;
      for (guint p = self->kept->len; p < self->parts->len; p++)
        if (straighten_for (self, i, p) > straighten)
          *get_suits (self, i, p) = FALSE;
      return;
    }
}

static gboolean
has_board (const Job *self, guint part)
{
  for (guint i = 0; i < self->plan->boards->len; i++)
    if (*get_suits (self, i, part) && is_wide_enough (self, i, part))
      return TRUE;
  return FALSE;
}

static void
straighten_boards (Job *self)
{
  self->straighten = g_new0 (double, self->plan->boards->len + 1);
  for (guint i = 0; i < self->plan->boards->len; i++)
    self->straighten[i] = find_straighten (self, i);
  for (guint p = self->kept->len; p < self->parts->len; p++)
    if (!has_board (self, p))
      save_part (self, p);
  for (guint p = self->kept->len; p < self->parts->len; p++)
    {
      for (guint i = 0; i < self->plan->boards->len; i++)
        *get_suits (self, i, p) = *get_suits (self, i, p) && is_wide_enough (self, i, p);
      if (!has_board (self, p)) /* the search would refuse all for it */
        g_array_index (self->parts, BsCutPart, p).quantity = 0;
    }
}

static void
add_stock (Job *self)
{
  for (guint i = 0; i < self->plan->boards->len; i++)
    {
      const BsBoard *board = self->plan->boards->pdata[i];
      GArray *defects = bs_saw_defects_new (self->plan, board);
      const BsCutStock stock = bs_saw_stock (board, self->straighten[i], defects);

      g_ptr_array_add (self->defects, defects);
      g_array_append_val (self->stock, stock);
    }
}

static BsCutOrder
find_order (BsSawFirst first)
{
  switch (first)
    {
    case BS_SAW_FIRST_CROSSCUT:
      return BS_CUT_CROSSCUT_FIRST;
    case BS_SAW_FIRST_RIP:
      return BS_CUT_RIP_FIRST;
    case BS_SAW_FIRST_EITHER:
    default:
      return BS_CUT_EITHER;
    }
}

static void
job_init (Job *self, const BsPlan *plan, gboolean keeps_all)
{
  const BsSaw *saw = &plan->shop.saw;

  *self = (Job){
    .plan = plan,
    .wishes = bs_saw_wishes_new (plan),
    .stock = g_array_new (FALSE, FALSE, sizeof (BsCutStock)),
    .defects = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref),
    .parts = g_array_new (FALSE, FALSE, sizeof (BsCutPart)),
    .pins = g_array_new (FALSE, FALSE, sizeof (BsCutPin)),
    .kept = g_array_new (FALSE, FALSE, sizeof (guint)),
    .wish_of = g_array_new (FALSE, FALSE, sizeof (guint)),
  };
  keep_cuts (self, keeps_all);
  add_wishes (self);
  find_suits (self);
  straighten_boards (self);
  add_stock (self);
  self->cutting = (BsCutting){
    .kerf = bs_saw_kerf (plan),
    .trim_end = bs_saw_round_up (plan->units, saw->end_trim),
    .trim_edge = bs_saw_round_up (plan->units, saw->edge_trim),
    .min_offcut = saw->min_offcut,
    .order = find_order (saw->first),
    .stock = (const BsCutStock *)self->stock->data,
    .n_stock = self->stock->len,
    .parts = (const BsCutPart *)self->parts->data,
    .n_parts = self->parts->len,
    .pins = (const BsCutPin *)self->pins->data,
    .n_pins = self->pins->len,
    .suits = self->suits,
  };
}

static void
job_clear (Job *self)
{
  g_array_unref (self->wishes);
  g_array_unref (self->stock);
  g_ptr_array_unref (self->defects);
  g_array_unref (self->parts);
  g_array_unref (self->pins);
  g_array_unref (self->kept);
  g_array_unref (self->wish_of);
  g_free (self->suits);
  g_free (self->straighten);
}

static void
add_cut (BsSawPlan *self, const BsCut *cut)
{
  BsCut copy = *cut;

  bs_text_share (copy.board);
  bs_text_share (copy.piece);
  bs_text_share (copy.unknown);
  g_array_append_val (self->cuts, copy);
}

static void
add_new_cut (BsSawPlan *self, const Job *job, const BsCutPlan *found, const BsCutPiece *piece)
{
  guint stock = g_array_index (found->boards, BsCutBoard, piece->board).stock;
  const BsBoard *board = job->plan->boards->pdata[stock];
  const BsSawWish *wish
      = &g_array_index (job->wishes, BsSawWish, g_array_index (job->wish_of, guint, piece->part));
  BsCut cut = {
    .x = piece->x,
    .y = piece->y,
    .length = piece->length,
    .width = piece->width,
  };

  bs_text_set (&cut.board, board->id);
  bs_text_set (&cut.piece, wish->id);
  g_array_append_val (self->cuts, cut);
}

static BsSawPlan *
describe (const Job *job, const BsCutPlan *found)
{
  BsSawPlan *self = g_new0 (BsSawPlan, 1);

  self->cuts = bs_cuts_new ();
  for (guint i = 0; i < job->kept->len; i++)
    add_cut (self, get_cut (job, g_array_index (job->kept, guint, i)));
  for (guint i = 0; i < found->pieces->len; i++)
    {
      const BsCutPiece *piece = &g_array_index (found->pieces, BsCutPiece, i);

      if (!piece->is_pinned)
        add_new_cut (self, job, found, piece);
    }
  self->price_minor = found->price_minor;
  self->bound_minor = found->bound_minor;
  self->is_bound = found->n_missing == 0;
  self->is_price_least = found->is_price_least;
  self->is_waste_least = found->is_waste_least;
  return self;
}

typedef struct
{
  const Job *job;
  const BsSawEffort *effort;
} Watch;

static void
better_cb (const BsCutPlan *found, gpointer data)
{
  const Watch *watch = data;
  g_autoptr (BsSawPlan) plan = describe (watch->job, found);

  watch->effort->better (plan, watch->effort->data);
}

/* Counted, so that the same plan gives the same cuts on every machine. */
static gboolean
count_down (double done, gpointer steps_left)
{
  return --*(int *)steps_left > 0;
}

/* Whether those that stay can be sawn as they lie. The search would refuse them, too, but by
 * number. */
static gboolean
check_kept (const Job *job, GError **error)
{
  g_autoptr (BsPlan) kept = bs_plan_copy (job->plan);
  g_autoptr (BsSawRack) rack = NULL;

  g_array_set_size (kept->cuts, 0);
  for (guint i = 0; i < job->kept->len; i++)
    bs_plan_add_cut (kept, get_cut (job, g_array_index (job->kept, guint, i)));
  rack = bs_saw_rack_new (kept);
  for (guint i = 0; rack->n_faults > 0 && i < rack->boards->len; i++)
    {
      g_autofree char *fault = bs_sawn_board_tell_fault (rack->boards->pdata[i], kept);

      if (fault == NULL)
        continue;
      g_set_error_literal (error, BS_CUTTING_ERROR, BS_CUTTING_ERROR_PIN, fault);
      return FALSE;
    }
  return TRUE;
}

BsSawPlan *
bs_saw_solve (const BsPlan *plan, const BsSawEffort *effort, GError **error)
{
  g_autoptr (BsCutPlan) found = NULL;
  BsSawPlan *self = NULL;
  int steps_left = QUICK_STEPS;
  Job job;

  job_init (&job, plan, effort->keeps_all);
  const Watch watch = { &job, effort };
  BsCutEffort search = bs_cut_effort_default ();
  search.progress = effort->progress;
  if (effort->is_quick)
    search.progress = (BsProgress){ .report = count_down, .data = &steps_left };
  if (effort->better != NULL)
    {
      search.better = better_cb;
      search.data = (gpointer)&watch;
    }
  if (check_kept (&job, error))
    found = bs_cutting_solve (&job.cutting, &search, error);
  if (found != NULL)
    self = describe (&job, found);
  job_clear (&job);
  return self;
}

/* Whether two jobs are one to the search. */

static gboolean
is_same (double a, double b)
{
  return !(a < b) && !(a > b);
}

static gboolean
is_same_defect (const BsCutDefect *a, const BsCutDefect *b)
{
  return is_same (a->x_from, b->x_from) && is_same (a->x_to, b->x_to)
         && is_same (a->y_from, b->y_from) && is_same (a->y_to, b->y_to) && a->faces == b->faces;
}

static gboolean
is_same_stock (const BsCutStock *a, const BsCutStock *b)
{
  if (!is_same (a->length, b->length) || !is_same (a->width, b->width)
      || !is_same (a->thickness, b->thickness) || !is_same (a->straighten, b->straighten)
      || a->price_minor != b->price_minor || a->looks != b->looks || a->n_defects != b->n_defects)
    return FALSE;
  for (guint k = 0; k < a->n_defects; k++)
    if (!is_same_defect (&a->defects[k], &b->defects[k]))
      return FALSE;
  return TRUE;
}

static gboolean
is_same_part (const BsCutPart *a, const BsCutPart *b)
{
  return is_same (a->length, b->length) && is_same (a->width, b->width)
         && a->quantity == b->quantity && a->clear_faces == b->clear_faces
         && a->clear_edges == b->clear_edges && a->is_on_show == b->is_on_show;
}

static gboolean
is_same_saw (const BsCutting *a, const BsCutting *b)
{
  return is_same (a->kerf, b->kerf) && is_same (a->trim_end, b->trim_end)
         && is_same (a->trim_edge, b->trim_edge) && is_same (a->min_offcut, b->min_offcut)
         && a->order == b->order;
}

static const char *
get_part_id (const Job *self, guint part)
{
  guint wish = g_array_index (self->wish_of, guint, part);

  return wish == NO_WISH ? NULL : g_array_index (self->wishes, BsSawWish, wish).id;
}

/* With what is wanted and no board can give. */
static gboolean
is_same_wanted (const Job *self, const Job *other)
{
  if (self->wishes->len != other->wishes->len)
    return FALSE;
  for (guint i = 0; i < self->wishes->len; i++)
    {
      const BsSawWish *a = &g_array_index (self->wishes, BsSawWish, i);
      const BsSawWish *b = &g_array_index (other->wishes, BsSawWish, i);

      if (a->count != b->count || g_strcmp0 (a->id, b->id) != 0)
        return FALSE;
    }
  return TRUE;
}

/* The kept cuts are the same: they are compared with all others. */
static gboolean
is_same_job (const Job *self, const Job *other)
{
  const BsCutting *a = &self->cutting, *b = &other->cutting;

  if (!is_same_wanted (self, other) || !is_same_saw (a, b) || a->n_stock != b->n_stock
      || a->n_parts != b->n_parts
      || memcmp (self->suits, other->suits, (gsize)a->n_stock * a->n_parts * sizeof (gboolean))
             != 0)
    return FALSE;
  for (guint i = 0; i < a->n_stock; i++)
    if (!is_same_stock (&a->stock[i], &b->stock[i])
        || g_strcmp0 (((const BsBoard *)self->plan->boards->pdata[i])->id,
                      ((const BsBoard *)other->plan->boards->pdata[i])->id)
               != 0)
      return FALSE;
  for (guint p = 0; p < a->n_parts; p++)
    if (!is_same_part (&a->parts[p], &b->parts[p])
        || g_strcmp0 (get_part_id (self, p), get_part_id (other, p)) != 0)
      return FALSE;
  return TRUE;
}

static gboolean
is_same_cut (const BsCut *a, const BsCut *b)
{
  return g_str_equal (a->board, b->board) && g_strcmp0 (a->piece, b->piece) == 0
         && is_same (a->x, b->x) && is_same (a->y, b->y) && is_same (a->length, b->length)
         && is_same (a->width, b->width);
}

/* And every cut that the one keeps, the other keeps too. */
static gboolean
has_same_cuts (const BsPlan *proven, const BsPlan *plan)
{
  if (proven->cuts->len != plan->cuts->len)
    return FALSE;
  for (guint i = 0; i < plan->cuts->len; i++)
    {
      const BsCut *a = &g_array_index (proven->cuts, BsCut, i);
      const BsCut *b = &g_array_index (plan->cuts, BsCut, i);
      gboolean is_released = (a->is_pinned || a->is_cut) && !(b->is_pinned || b->is_cut);

      if (!is_same_cut (a, b) || is_released)
        return FALSE;
    }
  return TRUE;
}

gboolean
bs_saw_proof_holds (const BsPlan *proven, const BsPlan *plan)
{
  if (proven == plan)
    return TRUE;
  if (!has_same_cuts (proven, plan))
    return FALSE;

  g_autoptr (BsPlan) alike = bs_plan_copy (plan);
  Job before, now;

  g_array_set_size (alike->cuts, 0);
  for (guint i = 0; i < proven->cuts->len; i++)
    bs_plan_add_cut (alike, &g_array_index (proven->cuts, BsCut, i));
  job_init (&before, proven, FALSE);
  job_init (&now, alike, FALSE);
  gboolean holds = is_same_job (&before, &now);
  job_clear (&before);
  job_clear (&now);
  return holds;
}

void
bs_saw_plan_free (BsSawPlan *self)
{
  g_array_unref (self->cuts);
  g_free (self);
}
