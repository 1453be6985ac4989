/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/board-fields.h"

#include "app/defect-fields.h"

static const char *const run_outs[] = {
  N_ ("towards the left end"),
  N_ ("either way"),
  N_ ("towards the right end"),
  NULL,
};

#define RUN_OUT(label, face)                                                                       \
  {                                                                                                \
    BS_FIELD_CHOICE, label, N_ ("Towards which end, as the fibres rise there"),                    \
        G_STRUCT_OFFSET (BsBoard, run_out[face]), .choices = run_outs, .first_choice = -1          \
  }

const BsField bs_board_run_outs[] = {
  RUN_OUT (N_ ("Top planes cleanly"), BS_FACE_TOP),
  RUN_OUT (N_ ("Underside planes cleanly"), BS_FACE_UNDERSIDE),
  RUN_OUT (N_ ("Front edge planes cleanly"), BS_FACE_LEFT),
  RUN_OUT (N_ ("Back edge planes cleanly"), BS_FACE_RIGHT),
};
const guint bs_n_board_run_outs = G_N_ELEMENTS (bs_board_run_outs);

const BsField bs_board_details[] = {
  { BS_FIELD_NUMBER, N_ ("Pith, front to back"),
    N_ ("Centre of the growth rings, from the middle of the end grain; mostly outside of the wood"),
    G_STRUCT_OFFSET (BsBoard, pith_y), &bs_limits.pith, TRUE },
  { BS_FIELD_NUMBER, N_ ("Pith, upwards"), N_ ("From the middle of the end grain; minus: below it"),
    G_STRUCT_OFFSET (BsBoard, pith_z), &bs_limits.pith, TRUE },
};
const guint bs_n_board_details = G_N_ELEMENTS (bs_board_details);

static const BsField defect_fields[]
    = BS_DEFECT_FIELDS (bs_words_board_faces, BS_WORDS_BOARD_FACE_CONTEXT, NULL,
                        N_ ("From the front edge on a face, from the underside on an edge"));

static guint
count_defects (const BsPlan *plan, const char *owner)
{
  const BsBoard *board = owner != NULL ? bs_plan_find_board (plan, owner) : NULL;
  return board != NULL ? board->defects->len : 0;
}

static char *
dup_defect_id (const BsPlan *plan, const char *owner, guint index)
{
  return bs_record_defect_id (owner, index);
}

/* In the middle of the top. */
static BsPlan *
add_defect (const BsPlan *plan, const char *owner)
{
  BsPlan *copy = bs_plan_copy (plan);
  BsBoard *board = bs_record_board.edit (copy, owner);
  double half = MIN (25.0, 0.25 * MIN (board->length, board->width));
  BsDefect knot = {
    .kind = BS_DEFECT_KNOT,
    .face = BS_FACE_TOP,
    .x_from = 0.5 * board->length - half,
    .x_to = 0.5 * board->length + half,
    .across_from = 0.5 * board->width - half,
    .across_to = 0.5 * board->width + half,
    .severity = 1.0,
  };
  g_array_append_val (board->defects, knot);
  return copy;
}

static BsPlan *
take_off_defect (const BsPlan *plan, const char *owner, guint index)
{
  BsPlan *copy = bs_plan_copy (plan);
  BsBoard *board = bs_record_board.edit (copy, owner);
  g_array_remove_index (board->defects, index);
  return copy;
}

const BsRows bs_board_defects = {
  .heading = N_ ("Defects"),
  .add_label = N_ ("Add a defect"),
  .none
  = N_ ("None noted. Draw one on the board: press where it begins, and drag over it; by keys, "
        "Insert adds one."),
  .record = &bs_record_board_defect,
  .fields = defect_fields,
  .n_fields = G_N_ELEMENTS (defect_fields),
  .count = count_defects,
  .dup_id = dup_defect_id,
  .add = add_defect,
  .take_off = take_off_defect,
};
