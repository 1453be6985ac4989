/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits-private.h"

#include "core/limits.h"
#include "core/text.h"

/* Edits of many boards at once. */

/* For a rack that is empty: 8/4. */
#define FIRST_THICKNESS 50.8
#define FIRST_WIDTH 150.0

BsBoard *
bs_edit_next_board (const BsPlan *plan)
{
  BsBoard *board = bs_board_new ("");

  if (plan->boards->len == 0)
    {
      board->length = MIN (plan->slab.length + 100.0, bs_limits.board_length.most);
      board->width = FIRST_WIDTH;
      board->thickness = FIRST_THICKNESS;
      if (plan->woods->len > 0)
        bs_text_set (&board->wood, ((BsWood *)plan->woods->pdata[0])->id);
      return board;
    }

  const BsBoard *last = plan->boards->pdata[plan->boards->len - 1];
  board->length = last->length;
  board->width = last->width;
  board->thickness = last->thickness;
  bs_text_set (&board->wood, last->wood);
  return board;
}

static void
add_woods (BsPlan *edited, const GPtrArray *woods)
{
  for (guint i = 0; i < woods->len; i++)
    {
      BsWood *wood = woods->pdata[i];
      if (bs_plan_find_wood (edited, wood->id) == NULL)
        g_ptr_array_add (edited->woods, bs_wood_ref (wood));
    }
}

/* Place of each board plus one, by its id. */
static GHashTable *
index_boards (const BsPlan *plan)
{
  GHashTable *places = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < plan->boards->len; i++)
    g_hash_table_insert (places, ((BsBoard *)plan->boards->pdata[i])->id, GUINT_TO_POINTER (i + 1));
  return places;
}

static void
give_id (BsBoard *board, GHashTable *places, guint *number)
{
  g_autofree char *id = NULL;

  do
    {
      g_free (id);
      id = g_strdup_printf ("board-%u", ++*number);
    }
  while (g_hash_table_contains (places, id));
  bs_text_set (&board->id, id);
}

/* A board has to be told from others on paper too. */
static void
give_label (BsBoard *board, guint number)
{
  if (board->label != NULL)
    return;
  g_autofree char *label = g_strdup_printf ("%u", number);
  bs_text_set (&board->label, label);
}

/* Puts `fresh` in before the one at a place; their references go over. */
static void
insert_boards (GPtrArray *boards, guint at, const GPtrArray *fresh)
{
  guint n_behind = boards->len - at;
  g_autofree gpointer *behind
      = n_behind > 0 ? g_memdup2 (boards->pdata + at, n_behind * sizeof (gpointer)) : NULL;

  g_ptr_array_set_size (boards, (int)(boards->len + fresh->len));
  for (guint i = 0; i < fresh->len; i++)
    boards->pdata[at + i] = fresh->pdata[i];
  for (guint i = 0; i < n_behind; i++)
    boards->pdata[at + fresh->len + i] = behind[i];
}

BsPlan *
bs_edit_put_boards (BsPlan *plan, const GPtrArray *boards, const GPtrArray *woods, guint at)
{
  g_autoptr (GHashTable) places = index_boards (plan);
  g_autoptr (GPtrArray) fresh = g_ptr_array_new ();
  BsPlan *edited = bs_plan_copy (plan);
  guint number = plan->boards->len;

  if (woods != NULL)
    add_woods (edited, woods);
  for (guint i = 0; i < boards->len; i++)
    {
      BsBoard *board = bs_edit_fit_board (boards->pdata[i]);
      guint place = GPOINTER_TO_UINT (g_hash_table_lookup (places, board->id));

      if (place == 0)
        {
          give_id (board, places, &number);
          g_ptr_array_add (fresh, board);
          give_label (board, plan->boards->len + fresh->len);
          continue;
        }
      bs_board_unref (edited->boards->pdata[place - 1]);
      edited->boards->pdata[place - 1] = board;
    }
  insert_boards (edited->boards, MIN (at, plan->boards->len), fresh);
  return edited;
}

BsPlan *
bs_edit_remove_boards (BsPlan *plan, const char *const *ids)
{
  g_autoptr (GHashTable) gone = g_hash_table_new (g_str_hash, g_str_equal);
  BsPlan *edited = bs_plan_copy (plan);

  for (const char *const *id = ids; *id != NULL; id++)
    g_hash_table_add (gone, (gpointer)*id);
  g_ptr_array_set_size (edited->boards, 0);
  for (guint i = 0; i < plan->boards->len; i++)
    {
      BsBoard *board = plan->boards->pdata[i];
      if (!g_hash_table_contains (gone, board->id))
        g_ptr_array_add (edited->boards, bs_board_ref (board));
    }
  bs_edit_forget_boards (edited);
  return edited;
}
