/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/slab-wish.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/limits.h"
#include "core/text.h"

/* What is sawn off both ends of the slab together, and how far its laminations stand uneven once
 * they are glued, mm: common practice, no source. */
#define ENDS 30.0
#define UNEVEN 2.5

/* A width and a thickness that were typed in inches differ by rounding. */
#define ROUNDING 1e-9

BsSlabWish
bs_slab_wish (const BsPlan *plan, double thickness)
{
  BsSlabWish self = { 0 };

  g_return_val_if_fail (thickness > 0.0, self);

  self.count = MAX (1, (int)ceil (plan->slab.width / thickness - ROUNDING));
  self.thickness = plan->slab.width / self.count;
  self.length = plan->slab.length + ENDS;
  self.height = plan->slab.thickness + 2.0 * plan->slab.allowance + UNEVEN;
  return self;
}

BsPlan *
bs_slab_wish_make_laminations (const BsPlan *plan)
{
  g_return_val_if_fail (plan->laminations->len == 0, NULL);

  BsPlan *edited = bs_plan_copy (plan);
  BsSlabWish wish = bs_slab_wish (plan, plan->buying.lamination_size);

  for (int i = 0; i < MIN (wish.count, BS_MAX_LAMINATIONS); i++)
    {
      g_autofree char *id = bs_plan_make_lamination_id (edited);
      g_autofree char *label = g_strdup_printf ("%d", i + 1);
      BsLamination *lamination = bs_lamination_new (id);

      bs_text_set (&lamination->label, label);
      if (plan->woods->len > 0)
        bs_text_set (&lamination->wood, ((BsWood *)plan->woods->pdata[0])->id);
      lamination->length = wish.length;
      lamination->thickness = wish.thickness;
      lamination->height = wish.height;
      g_ptr_array_add (edited->laminations, lamination);
      bs_plan_insert_placement (edited, i, id, BS_ORIENTATION_AS_MARKED, 0.0);
    }
  return edited;
}

void
bs_slab_wish_explain (const BsSlabWish *self, const BsPlan *plan, double thickness, BsWorking *why)
{
  bs_working_init (why, N_ ("Laminations for the slab"),
                   N_ ("As few as fill the slab’s width with none above the size asked for. Each "
                       "is longer and higher than the slab by what its ends and the flattening "
                       "take."),
                   "n = W / w, rounded up", BS_QUANTITY_COUNT,
                   N_ ("It is exact; what the flattening takes is a planning figure."));
  why->value = self->count;
  bs_working_add (why, N_ ("width of the slab"), "W", plan->slab.width, BS_QUANTITY_LENGTH,
                  N_ ("set by you"));
  bs_working_add (why, N_ ("size across the slab, at most"), "w", thickness, BS_QUANTITY_LENGTH,
                  N_ ("set by you"));
  bs_working_add (why, N_ ("size across the slab, of each"), "", self->thickness,
                  BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("length of each, with what the ends take"), "", self->length,
                  BS_QUANTITY_LENGTH, N_ ("30 mm for both ends: common practice, no source"));
  bs_working_add (why, N_ ("height of each, with what the flattening takes"), "", self->height,
                  BS_QUANTITY_LENGTH,
                  N_ ("tool marks on both faces and 2.5 mm for unevenness: common practice, no "
                      "source"));
}
