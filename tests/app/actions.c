/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/actions.h"

#include <string.h>

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
      g_assert_nonnull (bs_actions_group_title (actions[i].group));
      g_assert_true (bs_actions_find (actions[i].name) == &actions[i]);
    }
  g_assert_null (bs_actions_find ("win.no-such-thing"));
}

/* The whole window has these; all others work inside one widget only, so that another may have the
 * same key. */
static gboolean
is_everywhere (const BsAction *action)
{
  return g_str_has_prefix (action->name, "win.") || g_str_has_prefix (action->name, "app.");
}

static void
check_key (GHashTable *seen, const BsAction *action, const char *key)
{
  g_autoptr (GtkShortcutTrigger) trigger = gtk_shortcut_trigger_parse_string (key);
  g_autofree char *label = bs_actions_key_label (key);
  g_autofree char *group = g_strndup (action->name, strcspn (action->name, "."));

  g_assert_nonnull (trigger);
  g_assert_cmpstr (label, !=, "");
  g_autofree char *text = gtk_shortcut_trigger_to_string (trigger);
  g_test_message ("%s: %s", action->name, text);
  g_assert_false (g_hash_table_contains (seen, text));
  g_assert_true (g_hash_table_add (seen, is_everywhere (action)
                                             ? g_steal_pointer (&text)
                                             : g_strconcat (group, " ", text, NULL)));
}

/* Every key can be read, and none stands for two things where it works. */
static void
test_keys (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  guint n;
  const BsAction *actions = bs_actions_get_all (&n);

  for (guint pass = 0; pass < 2; pass++) /* those of the whole window first */
    for (guint i = 0; i < n; i++)
      for (guint k = 0; k < BS_ACTION_MAX_KEYS && actions[i].keys[k] != NULL; k++)
        if (is_everywhere (&actions[i]) == (pass == 0))
          check_key (seen, &actions[i], actions[i].keys[k]);
}

/* Actions of the class of a widget or of one below it. */
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
        break;
      if (g_str_equal (action, name))
        return TRUE;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (is_installed (child, name))
      return TRUE;
  return FALSE;
}

/* Pages are made when someone goes there. */
static void
go_everywhere (BsWindow *window)
{
  GtkStack *places = GTK_STACK (desk_find (GTK_WIDGET (window), GTK_TYPE_STACK));
  g_autoptr (GtkSelectionModel) pages = gtk_stack_get_pages (places);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (pages)); i++)
    gtk_selection_model_select_item (pages, i, TRUE);
  gtk_stack_set_visible_child_name (places, "glue-up");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.propose", NULL);
}

/* What the table names, the window or something in it does. Actions with a state of their own stand
 * in a group of the window, all others in a class. */
static void
test_installed (void)
{
  BsWindow *window = desk_open ();
  GApplication *application = G_APPLICATION (gtk_window_get_application (GTK_WINDOW (window)));
  guint n;
  const BsAction *actions = bs_actions_get_all (&n);

  go_everywhere (window);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = NULL;
      g_autoptr (GVariant) target = NULL;
      const char *in_group;

      g_action_parse_detailed_name (actions[i].name, &name, &target, NULL);
      in_group = strchr (name, '.') + 1;
      g_test_message ("%s", name);
      g_assert_true (is_installed (GTK_WIDGET (window), name)
                     || g_action_group_has_action (G_ACTION_GROUP (window), in_group)
                     || g_action_group_has_action (G_ACTION_GROUP (application), in_group));
    }
  desk_close (window);
}

/* Every group has a title: the window of keys is made of them. */
static void
test_groups (void)
{
  for (guint group = 0; group < BS_N_ACTION_GROUPS; group++)
    g_assert_cmpstr (bs_actions_group_title ((BsActionGroup)group), !=, NULL);
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
  g_test_add_func ("/actions/groups", test_groups);
  g_test_add_func ("/actions/menu-item", test_menu_item);
  return g_test_run ();
}
