/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/actions.h"

#include <string.h>

#include "app/clamping-canvas.h"
#include "app/rack-table.h"
#include "desk.h"

static void
test_names (void)
{
  guint n;
  const BsAction *actions = bs_actions_get_all (&n);

  g_assert_cmpuint (n, >, 0);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = NULL;
      g_autoptr (GVariant) target = NULL;

      g_assert_true (g_action_parse_detailed_name (actions[i].name, &name, &target, NULL));
      g_assert_cmpstr (actions[i].title, !=, "");
      g_assert_true (bs_actions_find (actions[i].name) == &actions[i]);
    }
  g_assert_null (bs_actions_find ("win.no-such-thing"));
}

/* A bare key works inside one widget only, so that another may have it too. */
static char *
find_reach (const BsAction *action, const char *key)
{
  gboolean is_bare = key[0] != '<';

  return g_strndup (is_bare ? action->name : "", strcspn (action->name, "."));
}

/* Every key can be read, and none stands for two things where it works. */
static void
test_keys (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  guint n;
  const BsAction *actions = bs_actions_get_all (&n);

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < BS_ACTION_MAX_KEYS && actions[i].keys[k] != NULL; k++)
      {
        g_autoptr (GtkShortcutTrigger) trigger
            = gtk_shortcut_trigger_parse_string (actions[i].keys[k]);
        g_assert_nonnull (trigger);
        g_autofree char *label = bs_actions_key_label (actions[i].keys[k]);
        g_assert_cmpstr (label, !=, "");
        char *text = gtk_shortcut_trigger_to_string (trigger);
        g_autofree char *reach = find_reach (&actions[i], actions[i].keys[k]);
        g_test_message ("%s: %s", actions[i].name, text);
        g_assert_true (g_hash_table_add (seen, g_strconcat (reach, " ", text, NULL)));
        g_free (text);
      }
}

/* What the table names, the window, the page that is shown or the rack does. Actions with a state
 * of their own stand in a group of the window, all others in a class. */
static gboolean
is_installed (GtkWidget *widget, const char *name)
{
  for (guint i = 0;; i++)
    {
      GType owner;
      const char *action, *property;
      const GVariantType *type;

      if (!gtk_widget_class_query_action (GTK_WIDGET_GET_CLASS (widget), i, &owner, &action, &type,
                                          &property))
        return FALSE;
      if (g_str_equal (action, name))
        return TRUE;
    }
}

static void
test_installed (void)
{
  BsWindow *window = desk_open ();
  GtkWidget *page
      = gtk_widget_get_ancestor (desk_find_button (GTK_WIDGET (window), "lamination.turn-over"),
                                 g_type_from_name ("BsGlueUpPage"));
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsSession) session = bs_session_new (plan);
  g_autoptr (GtkWidget) rack = g_object_ref_sink (bs_rack_table_new (session));
  GApplication *application = G_APPLICATION (gtk_window_get_application (GTK_WINDOW (window)));
  g_autoptr (GtkWidget) clamping
      = g_object_ref_sink (bs_clamping_canvas_new (bs_window_get_session (window)));
  guint n;
  const BsAction *actions = bs_actions_get_all (&n);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = NULL;
      g_autoptr (GVariant) target = NULL;
      const char *in_group;

      g_action_parse_detailed_name (actions[i].name, &name, &target, NULL);
      in_group = strchr (name, '.') + 1;
      g_test_message ("%s", name);
      g_assert_true (is_installed (GTK_WIDGET (window), name) || is_installed (page, name)
                     || is_installed (rack, name) || is_installed (clamping, name)
                     || g_action_group_has_action (G_ACTION_GROUP (window), in_group)
                     || g_action_group_has_action (G_ACTION_GROUP (application), in_group));
    }
  g_clear_object (&clamping);
  desk_close (window);
}

static void
test_menu_item (void)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  g_autofree char *label = NULL, *key = NULL;

  bs_actions_append (menu, "win.save");
  g_menu_model_get_item_attribute (G_MENU_MODEL (menu), 0, G_MENU_ATTRIBUTE_LABEL, "s", &label);
  g_menu_model_get_item_attribute (G_MENU_MODEL (menu), 0, "accel", "s", &key);
  g_assert_cmpstr (label, ==, "Save");
  g_assert_cmpstr (key, ==, "<Control>s");
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/actions/names", test_names);
  g_test_add_func ("/actions/keys", test_keys);
  g_test_add_func ("/actions/installed", test_installed);
  g_test_add_func ("/actions/menu-item", test_menu_item);
  return g_test_run ();
}
