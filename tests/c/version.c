/* The header and the linked library are of one version, and every status has words. */
#include "trainwright.h"
#include <stdio.h>
#include <string.h>

int main(void) {
    const uint32_t header = TW_VERSION_MAJOR * 1000000u + TW_VERSION_MINOR * 1000u + TW_VERSION_PATCH;
    if (tw_version() != header) {
        printf("header %lu, library %lu\n", (unsigned long)header, (unsigned long)tw_version());
        return 1;
    }
    for (int32_t status = -200; status <= 200; status++) {
        const char *text = tw_status_text(status);
        if (text == NULL || strlen(text) < 5) return 1;
    }
    return strcmp(tw_status_text(TW_STATUS_NO_ANSWER), "the question has no answer") == 0 ? 0 : 1;
}
