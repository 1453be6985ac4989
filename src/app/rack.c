/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack.h"

struct _BsRackRow
{
  GObject parent_instance;

  BsBoard *board; /* owned, or NULL */
};

struct _BsRack
{
  GObject parent_instance;

  BsSession *session;
  BsPlan *plan;    /* that is shown */
  GPtrArray *rows; /* BsRackRow; the last one is empty */
};

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsRackRow, bs_rack_row, G_TYPE_OBJECT)

static void bs_rack_list_init (GListModelInterface *interface);

G_DEFINE_FINAL_TYPE_WITH_CODE (BsRack, bs_rack, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, bs_rack_list_init))

/* Rows. */

static void
bs_rack_row_finalize (GObject *object)
{
  g_clear_pointer (&BS_RACK_ROW (object)->board, bs_board_unref);
  G_OBJECT_CLASS (bs_rack_row_parent_class)->finalize (object);
}

static void
bs_rack_row_class_init (BsRackRowClass *class)
{
  G_OBJECT_CLASS (class)->finalize = bs_rack_row_finalize;

  signals[CHANGED] = g_signal_new ("changed", BS_TYPE_RACK_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
bs_rack_row_init (BsRackRow *self)
{
}

static BsRackRow *
row_new (BsBoard *board)
{
  BsRackRow *row = g_object_new (BS_TYPE_RACK_ROW, NULL);

  row->board = board != NULL ? bs_board_ref (board) : NULL;
  return row;
}

const BsBoard *
bs_rack_row_get_board (BsRackRow *self)
{
  g_return_val_if_fail (BS_IS_RACK_ROW (self), NULL);

  return self->board;
}

/* The list. */

static GType
get_item_type (GListModel *list)
{
  return BS_TYPE_RACK_ROW;
}

static guint
get_n_items (GListModel *list)
{
  return BS_RACK (list)->rows->len;
}

static gpointer
get_item (GListModel *list, guint position)
{
  const GPtrArray *rows = BS_RACK (list)->rows;

  return position < rows->len ? g_object_ref (rows->pdata[position]) : NULL;
}

static void
bs_rack_list_init (GListModelInterface *interface)
{
  interface->get_item_type = get_item_type;
  interface->get_n_items = get_n_items;
  interface->get_item = get_item;
}

/* Whether row `row` shows the board of `board`, perhaps as it was before a change. */
static gboolean
is_of (const BsRack *self, guint row, const GPtrArray *boards, guint board)
{
  const BsRackRow *shown = self->rows->pdata[row];
  const BsBoard *other = boards->pdata[board];

  return shown->board == other || g_str_equal (shown->board->id, other->id);
}

static void
update_row (BsRackRow *row, BsBoard *board, gboolean looks_other)
{
  if (row->board == board && !looks_other)
    return;
  bs_board_ref (board);
  bs_board_unref (row->board);
  row->board = board;
  g_signal_emit (row, signals[CHANGED], 0);
}

/* What comes between the rows that are the same in front and behind is another list. */
static void
show_boards (BsRack *self, const GPtrArray *boards, gboolean looks_other)
{
  guint n_old = self->rows->len - 1, n_new = boards->len;
  guint front = 0, behind = 0;

  while (front < MIN (n_old, n_new) && is_of (self, front, boards, front))
    front++;
  while (behind < MIN (n_old, n_new) - front
         && is_of (self, n_old - 1 - behind, boards, n_new - 1 - behind))
    behind++;

  if (n_old - front - behind > 0)
    g_ptr_array_remove_range (self->rows, front, n_old - front - behind);
  for (guint i = front; i < n_new - behind; i++)
    g_ptr_array_insert (self->rows, (int)i, row_new (boards->pdata[i]));
  if (n_old != n_new || front + behind < n_new)
    g_list_model_items_changed (G_LIST_MODEL (self), front, n_old - front - behind,
                                n_new - front - behind);
  for (guint i = 0; i < n_new; i++)
    if (i < front || i >= n_new - behind)
      update_row (self->rows->pdata[i], boards->pdata[i], looks_other);
}

/* The wood's name stands in the rows. */
static gboolean
has_same_woods (const BsPlan *a, const BsPlan *b)
{
  if (a->woods->len != b->woods->len)
    return FALSE;
  for (guint i = 0; i < a->woods->len; i++)
    if (a->woods->pdata[i] != b->woods->pdata[i])
      return FALSE;
  return TRUE;
}

static void
session_changed_cb (BsRack *self, BsSession *session)
{
  g_assert (BS_IS_RACK (self));
  g_assert (BS_IS_SESSION (session));

  BsPlan *plan = bs_session_get_plan (session);
  if (plan == self->plan)
    return;
  gboolean looks_other = plan->units != self->plan->units
                         || g_strcmp0 (plan->currency, self->plan->currency) != 0
                         || !has_same_woods (plan, self->plan);
  bs_plan_unref (self->plan);
  self->plan = bs_plan_ref (plan);
  show_boards (self, plan->boards, looks_other);
}

static void
bs_rack_finalize (GObject *object)
{
  BsRack *self = BS_RACK (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->plan, bs_plan_unref);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (bs_rack_parent_class)->finalize (object);
}

static void
bs_rack_class_init (BsRackClass *class)
{
  G_OBJECT_CLASS (class)->finalize = bs_rack_finalize;
}

static void
bs_rack_init (BsRack *self)
{
  self->rows = g_ptr_array_new_with_free_func (g_object_unref);
  g_ptr_array_add (self->rows, row_new (NULL));
}

BsRack *
bs_rack_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsRack *self = g_object_new (BS_TYPE_RACK, NULL);
  self->session = g_object_ref (session);
  self->plan = bs_plan_ref (bs_session_get_plan (session));
  show_boards (self, self->plan->boards, FALSE);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed_cb), self,
                           G_CONNECT_SWAPPED);
  return self;
}
