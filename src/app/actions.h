/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The one table of what the person can do: names, words and keys. Menus, shortcuts and the window
 * that lists the keys are all made from it; the handlers stand with the widgets that own the
 * actions. */

typedef enum
{
  BS_ACTION_GROUP_PLAN,
  BS_ACTION_GROUP_EDIT,
  BS_ACTION_GROUP_BOARD,
  BS_ACTION_GROUP_CUTTING,
  BS_ACTION_GROUP_LAMINATION,
  BS_ACTION_GROUP_ORDER,
  BS_ACTION_GROUP_CLAMP,
  BS_ACTION_GROUP_VIEW,
  BS_N_ACTION_GROUPS,
} BsActionGroup;

#define BS_ACTION_MAX_KEYS 3

typedef struct
{
  const char *name; /* detailed: "lamination.move(-1)" */
  BsActionGroup group;
  const char *title;                    /* N_() */
  const char *keys[BS_ACTION_MAX_KEYS]; /* as for gtk_shortcut_trigger_parse_string () */
} BsAction;

/* All of them, in the order in which they are listed. */
const BsAction *bs_actions_get_all (guint *n);

/* NULL when the table has none of that name. */
const BsAction *bs_actions_find (const char *name);

/* Translated. */
const char *bs_actions_group_title (BsActionGroup group);

/* Lets the keys of all actions whose name begins with `prefix` ("win.") activate them on a widget.
 * A key with a modifier works anywhere in the window, a bare one only with the focus inside the
 * widget, so that letters can still be typed elsewhere. */
void bs_actions_add_shortcuts (GtkWidget *widget, const char *prefix);

/* The same with every key only inside: for keys that have a meaning of their own elsewhere. */
void bs_actions_add_inner_shortcuts (GtkWidget *widget, const char *prefix);

/* Lets Escape close a window that only shows or asks something. */
void bs_actions_add_escape (GtkWindow *window);

/* Appends an item with the table's words and first key. */
void bs_actions_append (GMenu *menu, const char *name);

/* A flat button with the table's words; its first key is the tooltip. */
GtkWidget *bs_actions_button_new (const char *name);

/* A key as the person reads it: "Ctrl+S". The caller's. */
char *bs_actions_key_label (const char *key);

G_END_DECLS
