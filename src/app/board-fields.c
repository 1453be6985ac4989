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

/* In the middle of the top. */
void
bs_board_begin_defect (gconstpointer owner, gpointer thing)
{
  const BsBoard *board = owner;
  double half = MIN (25.0, 0.25 * MIN (board->length, board->width));

  *(BsDefect *)thing = (BsDefect){
    .kind = BS_DEFECT_KNOT,
    .face = BS_FACE_TOP,
    .x_from = 0.5 * board->length - half,
    .x_to = 0.5 * board->length + half,
    .across_from = 0.5 * board->width - half,
    .across_to = 0.5 * board->width + half,
    .severity = 1.0,
  };
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
  .dup_id = bs_record_dup_defect_id,
  .owners = &bs_record_board,
  .array = G_STRUCT_OFFSET (BsBoard, defects),
  .begin = bs_board_begin_defect,
};
