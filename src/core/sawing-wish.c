/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-wish.h"

#include "core/units.h"

#include <math.h>

#define KERF_STEP_METRIC 0.1              /* mm */
#define STEP_METRIC 0.5                   /* mm */
#define STEP_INCH (BS_MM_PER_INCH / 64.0) /* mm */

/* Part of a step that sums of binary fractions may be off. */
#define ROUNDING 1e-4

static double
round_up (double size, double step)
{
  return ceil (size / step - ROUNDING) * step;
}

double
bs_saw_round_up (BsUnitSystem units, double size)
{
  return round_up (size, units == BS_UNIT_SYSTEM_METRIC ? STEP_METRIC : STEP_INCH);
}

double
bs_saw_kerf (const BsPlan *plan)
{
  return round_up (plan->shop.saw.kerf,
                   plan->units == BS_UNIT_SYSTEM_METRIC ? KERF_STEP_METRIC : STEP_INCH);
}

static void
add_rough_size (const BsPlan *plan, const BsMillingShop *shop, BsSawWish *wish)
{
  wish->rough_length = bs_saw_round_up (plan->units, wish->length);
  wish->rough_width
      = bs_saw_round_up (plan->units, bs_milling_strip (wish->width, wish->length, shop));
}

/* The slab's glue lines hide what is on the faces that are glued; those that people see must be
 * clear. */
static void
add_demands (const BsPlan *plan, const BsLamination *lamination, BsSawWish *wish)
{
  const BsSlab *slab = &plan->slab;
  int place = bs_plan_find_place (plan, lamination->id), last = (int)plan->order->len - 1;
  int up_and_down = slab->shows_underside ? 2 : 1;
  int outside
      = (place == 0 && slab->shows_front ? 1 : 0) + (place == last && slab->shows_back ? 1 : 0);
  gboolean is_on_edge = slab->layup == BS_LAYUP_ON_EDGE;

  wish->is_on_show = place >= 0;
  wish->clear_edges = is_on_edge ? up_and_down : outside;
  wish->clear_faces = is_on_edge ? outside : up_and_down;
}

int
bs_saw_count_cuts (const BsPlan *plan, const char *piece)
{
  int n = 0;

  for (guint i = 0; i < plan->cuts->len; i++)
    n += g_strcmp0 (g_array_index (plan->cuts, BsCut, i).piece, piece) == 0;
  return n;
}

static BsSawWish
wish_for_lamination (const BsPlan *plan, const BsLamination *lamination)
{
  double height = fmax (lamination->height, lamination->height + lamination->taper);
  gboolean is_on_edge = plan->slab.layup == BS_LAYUP_ON_EDGE;
  BsSawWish wish = {
    .id = lamination->id,
    .label = lamination->label != NULL ? lamination->label : lamination->id,
    .wood = lamination->wood,
    .is_lamination = TRUE,
    .count = lamination->board == NULL || bs_saw_count_cuts (plan, lamination->id) > 0,
    .length = lamination->length,
    .width = is_on_edge ? height : lamination->thickness,
    .thickness = is_on_edge ? lamination->thickness : height,
  };

  add_demands (plan, lamination, &wish);
  return wish;
}

static BsSawWish
wish_for_part (const BsPart *part)
{
  return (BsSawWish){
    .id = part->id,
    .label = part->name != NULL ? part->name : part->id,
    .wood = part->wood,
    .count = part->count,
    .length = part->length,
    .width = part->width,
    .thickness = part->thickness,
    .clear_faces = part->clear_faces,
    .clear_edges = part->clear_edges,
    .is_on_show = part->is_on_show,
  };
}

GArray *
bs_saw_wishes_new (const BsPlan *plan)
{
  GArray *wishes = g_array_new (FALSE, FALSE, sizeof (BsSawWish));
  const BsMillingShop shop = bs_milling_shop_of (plan);

  for (guint i = 0; i < plan->laminations->len + plan->parts->len; i++)
    {
      BsSawWish wish = i < plan->laminations->len
                           ? wish_for_lamination (plan, plan->laminations->pdata[i])
                           : wish_for_part (plan->parts->pdata[i - plan->laminations->len]);

      add_rough_size (plan, &shop, &wish);
      g_array_append_val (wishes, wish);
    }
  return wishes;
}

const BsSawWish *
bs_saw_wishes_find (const GArray *wishes, const char *id)
{
  for (guint i = 0; i < wishes->len; i++)
    if (g_strcmp0 (g_array_index (wishes, BsSawWish, i).id, id) == 0)
      return &g_array_index (wishes, BsSawWish, i);
  return NULL;
}

static double
known_or_none (double warp)
{
  return isnan (warp) ? 0.0 : warp;
}

BsRough
bs_saw_rough (const BsBoard *board)
{
  return (BsRough){
    .length = board->length,
    .width = board->width,
    .thickness = board->thickness,
    .bow = known_or_none (board->bow),
    .crook = known_or_none (board->crook),
    .cup = known_or_none (board->cup),
    .twist = known_or_none (board->twist),
  };
}

double
bs_saw_reach (const BsPlan *plan, const BsBoard *board, double length, double width)
{
  const BsRough rough = bs_saw_rough (board);

  if (length > board->length || width > board->width)
    return 0.0;
  const BsRough piece = bs_milling_piece (&rough, length, width);
  return bs_milling_thickness (&piece, plan->slab.allowance);
}

double
bs_saw_straighten (const BsPlan *plan, const BsBoard *board, double length)
{
  const BsRough rough = bs_saw_rough (board);
  gboolean is_whole = plan->shop.saw.first == BS_SAW_FIRST_RIP || length >= board->length;
  const BsRough piece = bs_milling_piece (&rough, is_whole ? board->length : length, board->width);

  return fabs (piece.crook);
}

gboolean
bs_saw_is_used_up (const BsPlan *plan, const BsBoard *board)
{
  gboolean is_milled = FALSE;

  for (guint i = 0; i < plan->laminations->len && !is_milled; i++)
    {
      const BsLamination *lamination = g_ptr_array_index (plan->laminations, i);

      is_milled = g_strcmp0 (lamination->board, board->id) == 0
                  && bs_saw_count_cuts (plan, lamination->id) == 0;
    }
  for (guint i = 0; i < plan->cuts->len && is_milled; i++)
    is_milled = !g_str_equal (g_array_index (plan->cuts, BsCut, i).board, board->id);
  return is_milled;
}

BsSawLack
bs_saw_board_lack (const BsPlan *plan, const BsBoard *board, const BsSawWish *wish)
{
  const BsSaw *saw = &plan->shop.saw;
  double length = board->length - 2.0 * saw->end_trim;
  double width
      = board->width - 2.0 * saw->edge_trim - bs_saw_straighten (plan, board, wish->rough_length);
  double reach = bs_saw_reach (plan, board, wish->rough_length, wish->rough_width);

  if (wish->wood != NULL && g_strcmp0 (wish->wood, board->wood) != 0)
    return (BsSawLack){ BS_SAW_LACK_WOOD, NAN, NAN };
  if (bs_saw_is_used_up (plan, board))
    return (BsSawLack){ BS_SAW_LACK_USED, NAN, NAN };
  if (wish->rough_length > length + ROUNDING)
    return (BsSawLack){ BS_SAW_LACK_LENGTH, wish->rough_length, length };
  if (wish->rough_width > width + ROUNDING)
    return (BsSawLack){ BS_SAW_LACK_WIDTH, wish->rough_width, width };
  if (wish->thickness > reach + ROUNDING)
    return (BsSawLack){ BS_SAW_LACK_THICKNESS, wish->thickness, reach };
  return (BsSawLack){ BS_SAW_LACK_NONE, NAN, NAN };
}

/* What comes later in the list of lacks is less of one. */
static gboolean
is_lesser (const BsSawLack *self, const BsSawLack *other)
{
  if (self->kind == BS_SAW_LACK_NONE || other->kind == BS_SAW_LACK_NONE)
    return other->kind != BS_SAW_LACK_NONE;
  if (self->kind != other->kind)
    return self->kind > other->kind;
  return self->needed - self->most < other->needed - other->most; /* not so for NAN */
}

BsSawLack
bs_saw_lack (const BsPlan *plan, const BsSawWish *wish)
{
  BsSawLack least = { BS_SAW_LACK_WOOD, NAN, NAN };

  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsSawLack lack = bs_saw_board_lack (plan, plan->boards->pdata[i], wish);

      if (is_lesser (&lack, &least))
        least = lack;
    }
  return least;
}
