/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/lamination-fields.h"

#include <glib/gi18n.h>

#include "app/defect-fields.h"
#include "words/words.h"

#define FIELD(kind, label, hint, member, ...)                                                      \
  {                                                                                                \
    kind, label, hint, G_STRUCT_OFFSET (BsLamination, member), __VA_ARGS__                         \
  }
const BsField bs_lamination_columns[] = {
  FIELD (BS_FIELD_TEXT, N_ ("Label"), N_ ("What is written on the wood"), label),
  FIELD (BS_FIELD_NUMBER, N_ ("Length"), NULL, length, &bs_limits.lamination_length,
         .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Thickness"), N_ ("Across the slab, from glue line to glue line"),
         thickness, &bs_limits.lamination_thickness, .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Height"),
         N_ ("From the underside to the show face, at the left end"), height,
         &bs_limits.lamination_height, .without_unit = TRUE),
  FIELD (
      BS_FIELD_NUMBER, N_ ("Bow"),
      N_ ("Middle off a line between the ends; plus: towards the back. Laid out from a board: 0, "
          "as there is wood enough to mill it straight"),
      bow, &bs_limits.warp, .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Crook"),
         N_ ("Middle off a line between the ends; plus: upwards. Laid out from a board: 0, as its "
             "strip is wide enough to take the spring off"),
         crook, &bs_limits.warp, .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Cup"),
         N_ ("Hollow across the wide face; plus: the middle towards the back, or upwards on flat. "
             "Laid out from a board: 0, as there is wood enough to mill it flat"),
         cup, &bs_limits.warp, .without_unit = TRUE),
  FIELD (
      BS_FIELD_NUMBER, N_ ("Twist"),
      N_ ("One corner off the bench with the other three down. Laid out from a board: 0, as there "
          "is wood enough to mill it flat"),
      twist, &bs_limits.warp, .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Taper"), N_ ("Height at the right end less the height at the left"),
         taper, &bs_limits.warp, .without_unit = TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Moisture"),
         N_ ("By the meter, corrected for wood and temperature; empty: unknown"), moisture_pct,
         &bs_limits.moisture, TRUE, TRUE),
};
const guint bs_n_lamination_columns = G_N_ELEMENTS (bs_lamination_columns);

static const char *const run_outs[] = {
  N_ ("towards the left end"),
  N_ ("either way"),
  N_ ("towards the right end"),
  NULL,
};

const BsField bs_lamination_details[] = {
  FIELD (BS_FIELD_WOOD, N_ ("Wood"), NULL, wood),
  FIELD (BS_FIELD_NUMBER, N_ ("Pith, front to back"),
         N_ ("Centre of the growth rings, from the middle of the end grain; mostly outside of the "
             "wood"),
         pith_y, &bs_limits.pith, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Pith, upwards"),
         N_ ("From the middle of the end grain; minus: below it"), pith_z, &bs_limits.pith, TRUE),
  FIELD (BS_FIELD_CHOICE, N_ ("Top planes cleanly"), N_ ("As the fibres rise at that edge"),
         run_out_top, .choices = run_outs, .first_choice = -1),
  FIELD (BS_FIELD_CHOICE, N_ ("Underside planes cleanly"), N_ ("As the fibres rise at that edge"),
         run_out_underside, .choices = run_outs, .first_choice = -1),
  FIELD (BS_FIELD_NUMBER, N_ ("Lightness"),
         N_ ("0 black to 100 white, against a grey card; empty: unknown"), lightness,
         &bs_limits.lightness, TRUE),
};
const guint bs_n_lamination_details = G_N_ELEMENTS (bs_lamination_details);

static const BsField defect_fields[] = BS_DEFECT_FIELDS (
    bs_words_faces, BS_WORDS_FACE_CONTEXT, N_ ("As marked, before it is turned"),
    N_ ("From the underside on a face, from the left face on an edge"));

static void
begin_defect (gconstpointer owner, gpointer thing)
{
  const BsLamination *lamination = owner;

  *(BsDefect *)thing = (BsDefect){
    .kind = BS_DEFECT_KNOT,
    .face = BS_FACE_TOP,
    .x_from = lamination->length / 2.0 - 10.0,
    .x_to = lamination->length / 2.0 + 10.0,
    .across_from = 0.0,
    .across_to = lamination->thickness / 2.0,
    .severity = 1.0,
  };
}

const BsRows bs_lamination_defects = {
  .heading = N_ ("Defects"),
  .add_label = N_ ("Add a defect"),
  .none = N_ ("None noted on this lamination."),
  .record = &bs_record_defect,
  .fields = defect_fields,
  .n_fields = G_N_ELEMENTS (defect_fields),
  .dup_id = bs_record_dup_defect_id,
  .owners = &bs_record_lamination,
  .array = G_STRUCT_OFFSET (BsLamination, defects),
  .begin = begin_defect,
};
