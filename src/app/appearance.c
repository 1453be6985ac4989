/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/appearance.h"

#include "app/settings.h"

/* The desktop's wish comes from the settings portal: XDG Desktop Portal documentation, Settings,
 * org.freedesktop.appearance color-scheme (0 no preference, 1 dark, 2 light). GTK 4.8 does not read
 * it by itself. */
#define PORTAL_NAME "org.freedesktop.portal.Desktop"
#define PORTAL_PATH "/org/freedesktop/portal/desktop"
#define PORTAL_INTERFACE "org.freedesktop.portal.Settings"
#define NAMESPACE "org.freedesktop.appearance"
#define KEY "color-scheme"
#define KEPT "appearance"

struct _BsAppearance
{
  GObject parent_instance;

  /* owned */
  char *choice;
  GCancellable *cancellable;
  GDBusConnection *bus;
  /* borrowed */
  GtkSettings *settings;
  GSettings *kept;
  /* state */
  guint subscription;
  gboolean theme_is_dark; /* what GTK started with, when nobody says otherwise */
  guint desktop;
};

enum
{
  PROP_0,
  PROP_CHOICE,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (BsAppearance, bs_appearance, G_TYPE_OBJECT)

static void
update_theme (BsAppearance *self)
{
  gboolean dark = self->desktop == 1 || (self->desktop == 0 && self->theme_is_dark);

  if (g_str_equal (self->choice, "dark"))
    dark = TRUE;
  else if (g_str_equal (self->choice, "light"))
    dark = FALSE;
  gboolean is_dark;
  g_object_get (self->settings, "gtk-application-prefer-dark-theme", &is_dark, NULL);
  if (dark != is_dark) /* or GTK reads the whole theme again */
    g_object_set (self->settings, "gtk-application-prefer-dark-theme", dark, NULL);
}

static void
take_value (BsAppearance *self, GVariant *value)
{
  g_autoptr (GVariant) inner = g_variant_ref (value);

  while (g_variant_is_of_type (inner, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *next = g_variant_get_variant (inner);
      g_variant_unref (inner);
      inner = next;
    }
  if (!g_variant_is_of_type (inner, G_VARIANT_TYPE_UINT32))
    return;
  self->desktop = g_variant_get_uint32 (inner);
  update_theme (self);
}

static void
setting_changed_cb (GDBusConnection *bus, const char *sender, const char *path,
                    const char *interface, const char *signal, GVariant *parameters,
                    gpointer user_data)
{
  const char *namespace = NULL, *key = NULL;
  g_autoptr (GVariant) value = NULL;

  if (!g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (parameters, "(&s&sv)", &namespace, &key, &value);
  if (g_str_equal (namespace, NAMESPACE) && g_str_equal (key, KEY))
    take_value (user_data, value);
}

static void
read_cb (GObject *bus, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (BsAppearance) self = user_data;
  g_autoptr (GVariant) reply
      = g_dbus_connection_call_finish (G_DBUS_CONNECTION (bus), result, NULL);

  if (reply == NULL) /* a desktop without a portal has no wish */
    return;
  g_autoptr (GVariant) value = g_variant_get_child_value (reply, 0);
  take_value (self, value);
}

static void
bus_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (BsAppearance) self = user_data;
  g_autoptr (GDBusConnection) bus = g_bus_get_finish (result, NULL);

  if (bus == NULL || g_cancellable_is_cancelled (self->cancellable))
    return;
  self->bus = g_object_ref (bus);
  self->subscription = g_dbus_connection_signal_subscribe (
      bus, PORTAL_NAME, PORTAL_INTERFACE, "SettingChanged", PORTAL_PATH, NAMESPACE,
      G_DBUS_SIGNAL_FLAGS_NONE, setting_changed_cb, self, NULL);
  g_dbus_connection_call (bus, PORTAL_NAME, PORTAL_PATH, PORTAL_INTERFACE, "Read",
                          g_variant_new ("(ss)", NAMESPACE, KEY), G_VARIANT_TYPE ("(v)"),
                          G_DBUS_CALL_FLAGS_NONE, -1, self->cancellable, read_cb,
                          g_object_ref (self));
}

static void
set_choice (BsAppearance *self, const char *choice)
{
  if (choice == NULL || g_strcmp0 (self->choice, choice) == 0)
    return;
  g_free (self->choice);
  self->choice = g_strdup (choice);
  if (self->kept != NULL)
    g_settings_set_string (self->kept, KEPT, choice);
  if (self->settings != NULL)
    update_theme (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_CHOICE]);
}

static void
bs_appearance_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  BsAppearance *self = BS_APPEARANCE (object);

  switch (id)
    {
    case PROP_CHOICE:
      g_value_set_string (value, self->choice);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bs_appearance_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  BsAppearance *self = BS_APPEARANCE (object);

  switch (id)
    {
    case PROP_CHOICE:
      set_choice (self, g_value_get_string (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bs_appearance_dispose (GObject *object)
{
  BsAppearance *self = BS_APPEARANCE (object);

  g_cancellable_cancel (self->cancellable);
  if (self->subscription != 0)
    g_dbus_connection_signal_unsubscribe (self->bus, self->subscription);
  self->subscription = 0;
  g_clear_object (&self->bus);
  G_OBJECT_CLASS (bs_appearance_parent_class)->dispose (object);
}

static void
bs_appearance_finalize (GObject *object)
{
  BsAppearance *self = BS_APPEARANCE (object);

  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->choice, g_free);
  G_OBJECT_CLASS (bs_appearance_parent_class)->finalize (object);
}

static void
bs_appearance_class_init (BsAppearanceClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->dispose = bs_appearance_dispose;
  object_class->finalize = bs_appearance_finalize;
  object_class->get_property = bs_appearance_get_property;
  object_class->set_property = bs_appearance_set_property;

  props[PROP_CHOICE]
      = g_param_spec_string ("choice", NULL, NULL, "system",
                             G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
bs_appearance_init (BsAppearance *self)
{
  self->cancellable = g_cancellable_new ();
  self->choice = g_strdup ("system");
}

BsAppearance *
bs_appearance_new (GtkSettings *settings)
{
  g_return_val_if_fail (GTK_IS_SETTINGS (settings), NULL);

  BsAppearance *self = g_object_new (BS_TYPE_APPEARANCE, NULL);
  self->settings = settings;
  g_object_get (settings, "gtk-application-prefer-dark-theme", &self->theme_is_dark, NULL);
  GSettings *kept = bs_settings_get ();
  if (kept != NULL)
    {
      g_autofree char *choice = g_settings_get_string (kept, KEPT);
      set_choice (self, choice);
    }
  self->kept = kept; /* from now on */
  update_theme (self);
  g_bus_get (G_BUS_TYPE_SESSION, self->cancellable, bus_cb, g_object_ref (self));
  return self;
}

GAction *
bs_appearance_create_action (BsAppearance *self)
{
  g_return_val_if_fail (BS_IS_APPEARANCE (self), NULL);

  return G_ACTION (g_property_action_new ("appearance", self, "choice"));
}

const BsPalette *
bs_appearance_find_palette (GtkWidget *widget)
{
  GdkRGBA text;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &text);
  return text.red + text.green + text.blue > 1.5f ? bs_palette_dark () : bs_palette_light ();
}

double
bs_appearance_find_text_size (GtkWidget *widget)
{
  const PangoFontDescription *font
      = pango_context_get_font_description (gtk_widget_get_pango_context (widget));
  double size = (double)pango_font_description_get_size (font) / PANGO_SCALE;
  double per_point
      = pango_cairo_context_get_resolution (gtk_widget_get_pango_context (widget)) / 72.0;

  return pango_font_description_get_size_is_absolute (font) ? size : size * per_point;
}
