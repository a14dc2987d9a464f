// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.nio.file.Path;
import java.util.Optional;

/**
 * The proof that a first start shows.
 *
 * @param file where the launcher says that it lies; empty when it says nothing
 */
public record DemoFile(Optional<Path> file) {
}
