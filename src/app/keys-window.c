/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/keys-window.h"

#include <glib/gi18n.h>

#include "app/actions.h"
#include "app/label.h"

/* All keys of an action: "Ctrl++, Ctrl+=". */
static char *
write_keys (const BsAction *action)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < BS_ACTION_MAX_KEYS && action->keys[i] != NULL; i++)
    {
      g_autofree char *key = bs_actions_key_label (action->keys[i]);

      g_string_append_printf (text, "%s%s", i == 0 ? "" : "   ", key);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
add_group (GtkGrid *grid, int *row, BsActionGroup group)
{
  guint n;
  const BsAction *actions = bs_actions_get_all (&n);
  GtkWidget *title = bs_label_new (bs_actions_group_title (group), "strong");

  if (*row > 0)
    gtk_widget_set_margin_top (title, 18);
  gtk_grid_attach (grid, title, 0, (*row)++, 2, 1);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *keys = NULL;

      if (actions[i].group != group || actions[i].keys[0] == NULL)
        continue;
      keys = write_keys (&actions[i]);
      gtk_grid_attach (grid, bs_label_new (_ (actions[i].title), NULL), 0, *row, 1, 1);
      gtk_grid_attach (grid, bs_label_new (keys, "faint"), 1, (*row)++, 1, 1);
    }
}

/* What the arrows do is GTK's own way of going from one thing to the next. */
static void
add_arrows (GtkGrid *grid, int *row)
{
  gtk_grid_attach (grid, bs_label_new (_ ("Go to the next lamination"), NULL), 0, *row, 1, 1);
  gtk_grid_attach (grid, bs_label_new (_ ("Left   Right   Up   Down"), "faint"), 1, (*row)++, 1, 1);
  gtk_grid_attach (grid, bs_label_new (_ ("Put back what is being carried"), NULL), 0, *row, 1, 1);
  gtk_grid_attach (grid, bs_label_new (_ ("Escape"), "faint"), 1, (*row)++, 1, 1);
}

GtkWindow *
bs_keys_window_new (GtkWindow *parent)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *grid = gtk_grid_new ();
  int row = 0;

  gtk_grid_set_column_spacing (GTK_GRID (grid), 24);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  for (guint group = 0; group < BS_N_ACTION_GROUPS; group++)
    {
      add_group (GTK_GRID (grid), &row, (BsActionGroup)group);
      if (group == BS_ACTION_GROUP_LAMINATION)
        add_arrows (GTK_GRID (grid), &row);
    }
  gtk_widget_add_css_class (grid, "keys");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), grid);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_window_set_child (GTK_WINDOW (window), scroller);
  gtk_window_set_title (GTK_WINDOW (window), _ ("Keys"));
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), 480, 600);
  bs_actions_add_escape (GTK_WINDOW (window));
  return GTK_WINDOW (window);
}
