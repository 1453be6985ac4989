/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/actions.h"

#include <glib/gi18n.h>

static const BsAction actions[] = {
  { "win.begin", BS_ACTION_GROUP_PLAN, N_ ("Begin an empty plan"), { "<Control>n" } },
  { "win.open", BS_ACTION_GROUP_PLAN, N_ ("Open…"), { "<Control>o" } },
  { "win.save", BS_ACTION_GROUP_PLAN, N_ ("Save"), { "<Control>s" } },
  { "win.save-as", BS_ACTION_GROUP_PLAN, N_ ("Save as…"), { "<Control><Shift>s" } },
  { "win.preview", BS_ACTION_GROUP_PLAN, N_ ("Look at the pages…"), { "<Control><Shift>p" } },
  { "win.print", BS_ACTION_GROUP_PLAN, N_ ("Print…"), { "<Control>p" } },
  { "win.page-setup", BS_ACTION_GROUP_PLAN, N_ ("Paper…"), { NULL } },
  { "win.workings", BS_ACTION_GROUP_PLAN, N_ ("Print the workings too"), { NULL } },
  { "win.export", BS_ACTION_GROUP_PLAN, N_ ("Write the diagram to a file…"), { "<Control>e" } },
  { "win.close", BS_ACTION_GROUP_PLAN, N_ ("Close"), { "<Control>w" } },
  { "app.quit", BS_ACTION_GROUP_PLAN, N_ ("Quit"), { "<Control>q" } },

  { "win.undo", BS_ACTION_GROUP_EDIT, N_ ("Undo"), { "<Control>z" } },
  { "win.redo", BS_ACTION_GROUP_EDIT, N_ ("Redo"), { "<Control><Shift>z", "<Control>y" } },

  { "board.add", BS_ACTION_GROUP_BOARD, N_ ("Add a board"), { "<Control>Return" } },
  { "board.more(1)", BS_ACTION_GROUP_BOARD, N_ ("One more like this"), { "<Control>d" } },
  { "board.strike-out", BS_ACTION_GROUP_BOARD, N_ ("Strike out"), { "<Control>Delete" } },
  { "board.copy", BS_ACTION_GROUP_BOARD, N_ ("Copy as a table"), { "<Control>c" } },
  { "board.paste", BS_ACTION_GROUP_BOARD, N_ ("Paste from a table"), { "<Control>v" } },
  { "board.read-table", BS_ACTION_GROUP_BOARD, N_ ("Read boards from a CSV file…"), { NULL } },
  { "board.write-table", BS_ACTION_GROUP_BOARD, N_ ("Write boards to a CSV file…"), { NULL } },

  { "cuts.plan", BS_ACTION_GROUP_CUTTING, N_ ("Plan the cuts"), { NULL } },
  { "cuts.stop", BS_ACTION_GROUP_CUTTING, N_ ("Stop"), { "<Control>period" } },
  { "cuts.lay-out", BS_ACTION_GROUP_CUTTING, N_ ("Lay out the laminations"), { NULL } },
  { "piece.pin", BS_ACTION_GROUP_CUTTING, N_ ("Pin or release"), { "k" } },
  { "piece.cut", BS_ACTION_GROUP_CUTTING, N_ ("Mark as cut or not"), { "c" } },
  { "piece.along(-1)",
    BS_ACTION_GROUP_CUTTING,
    N_ ("Move the piece towards the left end"),
    { "<Shift>Left" } },
  { "piece.along(1)",
    BS_ACTION_GROUP_CUTTING,
    N_ ("Move the piece towards the right end"),
    { "<Shift>Right" } },
  { "piece.across(1)",
    BS_ACTION_GROUP_CUTTING,
    N_ ("Move the piece towards the back edge"),
    { "<Shift>Up" } },
  { "piece.across(-1)",
    BS_ACTION_GROUP_CUTTING,
    N_ ("Move the piece towards the front edge"),
    { "<Shift>Down" } },
  { "piece.board(-1)",
    BS_ACTION_GROUP_CUTTING,
    N_ ("Move the piece to a board further up"),
    { "<Shift>Page_Up" } },
  { "piece.board(1)",
    BS_ACTION_GROUP_CUTTING,
    N_ ("Move the piece to a board further down"),
    { "<Shift>Page_Down" } },

  { "lamination.move(-1)",
    BS_ACTION_GROUP_LAMINATION,
    N_ ("Move towards the front"),
    { "<Alt>Left" } },
  { "lamination.move(1)",
    BS_ACTION_GROUP_LAMINATION,
    N_ ("Move towards the back"),
    { "<Alt>Right" } },
  { "lamination.move-to-end(-1)",
    BS_ACTION_GROUP_LAMINATION,
    N_ ("Move to the front"),
    { "<Alt>Home" } },
  { "lamination.move-to-end(1)",
    BS_ACTION_GROUP_LAMINATION,
    N_ ("Move to the back"),
    { "<Alt>End" } },
  { "lamination.turn-over", BS_ACTION_GROUP_LAMINATION, N_ ("Turn over"), { "t" } },
  { "lamination.end-for-end", BS_ACTION_GROUP_LAMINATION, N_ ("Turn end for end"), { "e" } },
  { "lamination.set-aside",
    BS_ACTION_GROUP_LAMINATION,
    N_ ("Set aside"),
    { "Delete", "<Alt>Down" } },
  { "lamination.bring-back",
    BS_ACTION_GROUP_LAMINATION,
    N_ ("Bring back"),
    { "Insert", "<Alt>Up" } },
  { "lamination.pin-place", BS_ACTION_GROUP_LAMINATION, N_ ("Pin at its place"), { "p" } },
  { "lamination.pin-neighbour",
    BS_ACTION_GROUP_LAMINATION,
    N_ ("Pin beside the one behind it"),
    { "n" } },
  { "lamination.pin-face", BS_ACTION_GROUP_LAMINATION, N_ ("Pin this face up"), { "f" } },
  { "lamination.menu",
    BS_ACTION_GROUP_LAMINATION,
    N_ ("What can be done with it"),
    { "Menu", "<Shift>F10" } },

  { "win.propose", BS_ACTION_GROUP_ORDER, N_ ("Propose an order"), { "<Control>r" } },
  { "order.look", BS_ACTION_GROUP_ORDER, N_ ("Look for an order"), { "<Control>l" } },
  { "order.stop", BS_ACTION_GROUP_ORDER, N_ ("Stop looking"), { "<Control>period" } },
  { "order.use", BS_ACTION_GROUP_ORDER, N_ ("Use this order"), { "<Control>u" } },
  { "order.discard", BS_ACTION_GROUP_ORDER, N_ ("Discard"), { "<Control>BackSpace" } },
  { "order.close", BS_ACTION_GROUP_ORDER, N_ ("Close the proposal"), { "<Control><Shift>r" } },

  { "clamp.choose(-1)", BS_ACTION_GROUP_CLAMP, N_ ("Choose the one before"), { "Page_Up" } },
  { "clamp.choose(1)", BS_ACTION_GROUP_CLAMP, N_ ("Choose the one after"), { "Page_Down" } },
  { "clamp.move(-10)", BS_ACTION_GROUP_CLAMP, N_ ("Move towards the left end"), { "Left" } },
  { "clamp.move(10)", BS_ACTION_GROUP_CLAMP, N_ ("Move towards the right end"), { "Right" } },
  { "clamp.move(-1)", BS_ACTION_GROUP_CLAMP, N_ ("Move a little to the left"), { "comma" } },
  { "clamp.move(1)", BS_ACTION_GROUP_CLAMP, N_ ("Move a little to the right"), { "period" } },
  { "clamp.tighten(1)", BS_ACTION_GROUP_CLAMP, N_ ("Tighten"), { "plus", "equal", "KP_Add" } },
  { "clamp.tighten(-1)", BS_ACTION_GROUP_CLAMP, N_ ("Ease"), { "minus", "KP_Subtract" } },
  { "clamp.turn-over", BS_ACTION_GROUP_CLAMP, N_ ("From above to below, or back"), { "t" } },
  { "clamp.take-off", BS_ACTION_GROUP_CLAMP, N_ ("Take off"), { "Delete" } },
  { "clamp.add", BS_ACTION_GROUP_CLAMP, N_ ("Add one in the widest gap"), { "Insert" } },
  { "clamp.choose-line(-1)",
    BS_ACTION_GROUP_CLAMP,
    N_ ("Glue line nearer to the front"),
    { "Down" } },
  { "clamp.choose-line(1)", BS_ACTION_GROUP_CLAMP, N_ ("Glue line nearer to the back"), { "Up" } },

  { "win.go(-1)", BS_ACTION_GROUP_VIEW, N_ ("To the place before"), { "<Alt>Page_Up" } },
  { "win.go(1)", BS_ACTION_GROUP_VIEW, N_ ("To the place after"), { "<Alt>Page_Down" } },
  { "view.fit", BS_ACTION_GROUP_VIEW, N_ ("Whole slab"), { "<Control>0", "<Control>KP_0" } },
  { "view.closer",
    BS_ACTION_GROUP_VIEW,
    N_ ("Closer"),
    { "<Control>plus", "<Control>equal", "<Control>KP_Add" } },
  { "view.farther",
    BS_ACTION_GROUP_VIEW,
    N_ ("Farther"),
    { "<Control>minus", "<Control>KP_Subtract" } },
  { "win.shortcuts", BS_ACTION_GROUP_VIEW, N_ ("Keys"), { "F1", "<Control>question" } },
  { "win.about", BS_ACTION_GROUP_VIEW, N_ ("About Broadstave"), { NULL } },
};

const BsAction *
bs_actions_get_all (guint *n)
{
  *n = G_N_ELEMENTS (actions);
  return actions;
}

const BsAction *
bs_actions_find (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    if (g_str_equal (actions[i].name, name))
      return &actions[i];
  return NULL;
}

const char *
bs_actions_group_title (BsActionGroup group)
{
  static const char *const titles[BS_N_ACTION_GROUPS] = {
    [BS_ACTION_GROUP_PLAN] = N_ ("Plan"),
    [BS_ACTION_GROUP_EDIT] = N_ ("Changes"),
    [BS_ACTION_GROUP_BOARD] = N_ ("Board"),
    [BS_ACTION_GROUP_CUTTING] = N_ ("Cutting"),
    [BS_ACTION_GROUP_LAMINATION] = N_ ("Lamination"),
    [BS_ACTION_GROUP_ORDER] = N_ ("Order"),
    [BS_ACTION_GROUP_CLAMP] = N_ ("Clamp"),
    [BS_ACTION_GROUP_VIEW] = N_ ("View"),
  };

  return _ (titles[group]);
}

static GtkShortcut *
shortcut_new (const BsAction *action, const char *key)
{
  g_autofree char *name = NULL;
  g_autoptr (GVariant) target = NULL;
  if (!g_action_parse_detailed_name (action->name, &name, &target, NULL))
    g_assert_not_reached ();

  GtkShortcut *shortcut
      = gtk_shortcut_new (gtk_shortcut_trigger_parse_string (key), gtk_named_action_new (name));
  gtk_shortcut_set_arguments (shortcut, target);
  return shortcut;
}

static gboolean
has_modifier (const char *key)
{
  return key[0] == '<' || (key[0] == 'F' && g_ascii_isdigit (key[1]));
}

/* The keys with a modifier go to one controller, bare ones to the other. */
static void
add_shortcuts (const char *prefix, GtkEventController *modified, GtkEventController *bare)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      if (!g_str_has_prefix (actions[i].name, prefix))
        continue;
      for (guint k = 0; k < BS_ACTION_MAX_KEYS && actions[i].keys[k] != NULL; k++)
        {
          const char *key = actions[i].keys[k];
          GtkEventController *where = has_modifier (key) ? modified : bare;
          gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (where),
                                                shortcut_new (&actions[i], key));
        }
    }
}

void
bs_actions_add_shortcuts (GtkWidget *widget, const char *prefix)
{
  g_return_if_fail (GTK_IS_WIDGET (widget));

  GtkEventController *anywhere = gtk_shortcut_controller_new ();
  GtkEventController *inside = gtk_shortcut_controller_new ();
  gtk_shortcut_controller_set_scope (GTK_SHORTCUT_CONTROLLER (anywhere), GTK_SHORTCUT_SCOPE_GLOBAL);
  add_shortcuts (prefix, anywhere, inside);
  gtk_widget_add_controller (widget, anywhere);
  gtk_widget_add_controller (widget, inside);
}

void
bs_actions_add_inner_shortcuts (GtkWidget *widget, const char *prefix)
{
  g_return_if_fail (GTK_IS_WIDGET (widget));

  GtkEventController *inside = gtk_shortcut_controller_new ();
  add_shortcuts (prefix, inside, inside);
  gtk_widget_add_controller (widget, inside);
}

void
bs_actions_append (GMenu *menu, const char *name)
{
  const BsAction *action = bs_actions_find (name);
  g_return_if_fail (action != NULL);

  g_autoptr (GMenuItem) item = g_menu_item_new (_ (action->title), action->name);
  if (action->keys[0] != NULL)
    g_menu_item_set_attribute (item, "accel", "s", action->keys[0]);
  g_menu_append_item (menu, item);
}

GtkWidget *
bs_actions_button_new (const char *name)
{
  const BsAction *action = bs_actions_find (name);
  g_return_val_if_fail (action != NULL, NULL);

  GtkWidget *button = gtk_button_new_with_label (_ (action->title));
  gtk_actionable_set_detailed_action_name (GTK_ACTIONABLE (button), action->name);
  gtk_widget_add_css_class (button, "flat");
  if (action->keys[0] != NULL)
    {
      g_autofree char *key = bs_actions_key_label (action->keys[0]);
      gtk_widget_set_tooltip_text (button, key);
    }
  return button;
}

char *
bs_actions_key_label (const char *key)
{
  g_autoptr (GtkShortcutTrigger) trigger = gtk_shortcut_trigger_parse_string (key);

  return gtk_shortcut_trigger_to_label (trigger, gdk_display_get_default ());
}

void
bs_actions_add_escape (GtkWindow *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys), gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                        gtk_named_action_new ("window.close")));
  gtk_widget_add_controller (GTK_WIDGET (window), keys);
}
