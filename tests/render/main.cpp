#include <cairo.h>
#include <fontconfig/fontconfig.h>
#include <gtest/gtest.h>
#include <pango/pangocairo.h>

// What the font libraries keep for the life of a process is given back, so that LeakSanitizer sees
// our own leaks only. Pango first: it holds fonts of cairo, and cairo holds patterns of fontconfig.
int main(int count, char** arguments) {
    testing::InitGoogleTest(&count, arguments);
    const int status = RUN_ALL_TESTS();
    pango_cairo_font_map_set_default(nullptr);
    cairo_debug_reset_static_data();
    FcFini();
    return status;
}
