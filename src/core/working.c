/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/working.h"

#include <math.h>

void
bs_working_init (BsWorking *self, const char *title, const char *explanation, const char *formula,
                 BsQuantity quantity, const char *certainty)
{
  *self = (BsWorking){
    .title = title,
    .explanation = explanation,
    .formula = formula,
    .value = NAN,
    .quantity = quantity,
    .low = NAN,
    .high = NAN,
    .certainty = certainty,
  };
}

void
bs_working_add (BsWorking *self, const char *name, const char *symbol, double value,
                BsQuantity quantity, const char *source)
{
  g_return_if_fail (self->n_terms < BS_WORKING_MAX_TERMS);

  self->terms[self->n_terms++] = (BsTerm){ name, symbol, value, quantity, source };
}
