/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/lamination.h"

G_BEGIN_DECLS

/* The part of a plan that comes before the glue-up: boards, what yards offer, what else is wanted
 * from the same boards, and what is cut where. Units and texts as in core/plan.h; an unknown number
 * is NAN. */

/* A board as bought or as it stands in the rack. It lies on a wide face: x along the grain from its
 * left end, y across its width from its front edge, z up. So its defects have the wide faces
 * BS_FACE_TOP and BS_FACE_UNDERSIDE, BS_FACE_LEFT is its front edge and BS_FACE_RIGHT its back
 * edge; warp, pith and run-out are those of a lamination lying flat: bow and cup along z, crook
 * along y. */
typedef struct
{
  GRefString *id;
  GRefString *label;
  GRefString *wood; /* id of a wood in the plan, or NULL */
  double length, width, thickness;
  double moisture_pct;
  gint64 price_minor;      /* of the whole board; 0: paid, or not known */
  double bow;              /* middle up (+) or down */
  double crook;            /* middle towards the back edge (+) or the front edge */
  double cup;              /* middle of the width up (+) or down */
  double twist;            /* how far one corner stands off, signed as BsLamination.twist */
  double pith_y, pith_z;   /* from the middle of the end */
  int run_out[BS_N_FACES]; /* by face: +1 planes cleanly towards the right end, -1 towards the left
                            * end, 0 either way or unknown */
  GArray *defects;         /* BsDefect */
  GRefString *photo_top;   /* path from the plan file's folder, or NULL; */
  GRefString *photo_underside;
  GRefString *unknown;
} BsBoard;

typedef enum
{
  BS_PRICE_PIECE,
  BS_PRICE_BOARD_FOOT, /* tallied as the trade does, see core/board-measure.h */
  BS_PRICE_CUBIC_METRE,
} BsPriceUnit;

#define BS_SUPPLY_OPEN (-1) /* as many as are wanted */

typedef struct
{
  double length;
  int supply; /* boards of this length, or BS_SUPPLY_OPEN */
  GRefString *unknown;
} BsOfferLength;

/* Boards of one wood and thickness that a yard sells whole. */
typedef struct
{
  GRefString *id;
  GRefString *yard;
  GRefString *wood;               /* id of a wood in the plan, or NULL */
  double thickness;               /* of the class: 8/4 is 50.8 */
  double width_least, width_most; /* of its boards */
  gboolean may_pick;              /* widths may be chosen from the pile */
  BsPriceUnit price_unit;
  gint64 price_minor; /* of one unit */
  GArray *lengths;    /* BsOfferLength */
  GRefString *unknown;
} BsOffer;

/* What else is wanted from the same boards: a leg, a rail. */
typedef struct
{
  GRefString *id; /* that no lamination has */
  GRefString *name;
  GRefString *wood; /* id of a wood in the plan; NULL: any */
  int count;
  double length, width, thickness; /* finished */
  int clear_faces;                 /* of its wide faces, how many must be free of defects: 0 to 2 */
  int clear_edges;                 /* likewise of its long edges */
  gboolean is_on_show;
  GRefString *unknown;
} BsPart;

/* A piece and where it lies on its board, as it leaves the saw. */
typedef struct
{
  GRefString *board;    /* id */
  GRefString *piece;    /* id of a lamination or a part */
  double x, y;          /* of its left front corner, from the board's */
  double length, width; /* rough */
  gboolean is_pinned;   /* stays there when the rest is planned anew */
  gboolean is_cut;      /* was cut already */
  GRefString *unknown;
} BsCut;

/* What the saw does first. */
typedef enum
{
  BS_SAW_FIRST_EITHER, /* each board its own choice */
  BS_SAW_FIRST_CROSSCUT,
  BS_SAW_FIRST_RIP,
} BsSawFirst;

typedef struct
{
  double kerf;
  double end_trim;       /* off each end of a board, for checks */
  double edge_trim;      /* off each edge of a board, for wane */
  double edge_allowance; /* off each edge of a strip beyond straight, for tool marks */
  double spring_per_m; /* crook of a strip 1 m long once it is ripped, and not before; it goes with
                        * the square of the length */
  double min_offcut;   /* shortest rest of a board that is worth keeping */
  BsSawFirst first;
} BsSaw;

/* Usual figures of a small shop: common practice, no source. */
BsSaw bs_saw_default (void);

/* Parts that plans share: fill them before they are put in a plan. The text is the id. A copy is
 * one's own, to be changed first. */
BsBoard *bs_board_new (const char *id);
BsBoard *bs_board_copy (const BsBoard *self);
BsBoard *bs_board_ref (BsBoard *self);
void bs_board_unref (BsBoard *self);

/* How far a face reaches across, mm. */
double bs_board_breadth (const BsBoard *self, BsFace face);

BsOffer *bs_offer_new (const char *id);
BsOffer *bs_offer_copy (const BsOffer *self);
void bs_offer_unref (BsOffer *self);
BsPart *bs_part_new (const char *id);
BsPart *bs_part_copy (const BsPart *self);
void bs_part_unref (BsPart *self);

/* Of BsCut, without any; it owns their texts. */
GArray *bs_cuts_new (void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsBoard, bs_board_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsOffer, bs_offer_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsPart, bs_part_unref)

G_END_DECLS
