/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/flattening-fields.h"

#include <glib/gi18n.h>

#include "app/form.h"
#include "core/flatten-explain.h"

#define FIELD(kind, label, hint, member, ...)                                                      \
  {                                                                                                \
    kind, label, hint, G_STRUCT_OFFSET (BsPlan, slab.member), __VA_ARGS__                          \
  }

static const char *const alignments[] = {
  N_ ("Undersides down on a flat bench"),
  N_ ("Show faces down on a flat bench"),
  N_ ("By their ends"),
  N_ ("By their middles"),
  NULL,
};

static const char *const methods[] = {
  N_ ("By hand plane"),
  N_ ("With a router on a sled"),
  N_ ("Through a planer"),
  NULL,
};

static const BsField work_fields[] = {
  FIELD (BS_FIELD_CHOICE, N_ ("Lined up"),
         N_ ("How the laminations come to lie in the press: crooked ones share their error best on "
             "a flat bench"),
         alignment, .choices = alignments),
  FIELD (BS_FIELD_CHOICE, N_ ("Flattened"), NULL, flatten_method, .choices = methods),
  FIELD (BS_FIELD_CHOICE, N_ ("Order of work"),
         N_ ("Which face is cut first, and how the slab lies then"), flatten_work,
         .choices = bs_flatten_work_names),
  FIELD (BS_FIELD_NUMBER, N_ ("Allowance on each face"),
         N_ ("Taken off beyond flat, for tool marks"), allowance, &bs_limits.allowance),
};

static const BsField uncertainty_fields[] = {
  FIELD (BS_FIELD_NUMBER, N_ ("Height of a lamination"),
         N_ ("Measure one spot ten times, lifting the caliper each time"), uncertainty.height,
         &bs_limits.uncertainty),
  FIELD (BS_FIELD_NUMBER, N_ ("Crook, cup and twist"),
         N_ ("Measure the same lamination ten times, laying the straightedge on anew"),
         uncertainty.warp, &bs_limits.uncertainty),
  FIELD (BS_FIELD_NUMBER, N_ ("Up or down in the press"),
         N_ ("Measure the steps between neighbours at mid-length of a slab that you glued"),
         uncertainty.offset, &bs_limits.uncertainty),
  FIELD (BS_FIELD_NUMBER, N_ ("One end against the other"),
         N_ ("Measure the same steps at both ends, and take the difference"), uncertainty.rock,
         &bs_limits.uncertainty),
};

GtkWidget *
bs_flattening_work_form_new (BsSession *session)
{
  return bs_form_new (session, N_ ("How it is made flat"), &bs_record_plan, NULL, work_fields,
                      G_N_ELEMENTS (work_fields));
}

GtkWidget *
bs_flattening_uncertainty_form_new (BsSession *session)
{
  GtkWidget *block = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (block),
                  bs_form_new (session, N_ ("What may be off (standard deviations)"),
                               &bs_record_plan, NULL, uncertainty_fields,
                               G_N_ELEMENTS (uncertainty_fields)));
  gtk_box_append (
      GTK_BOX (block),
      bs_form_note_new (
          _ ("To find yours, measure one thing ten times, putting the tool on anew each time; "
             "two measures in three lie within one deviation of their mean. Steps between "
             "neighbours of a slab that you glued tell the last two: divide what they spread by "
             "1.4. The defaults are common practice, no source.")));
  return block;
}
