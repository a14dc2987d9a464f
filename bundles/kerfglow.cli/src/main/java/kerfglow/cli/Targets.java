// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Where an option puts files: a file whose ending says its kind, or a folder that gets one of each kind for every proof.
 */
final class Targets {
    private final String option;
    private final List<String> names;
    private final List<String> endings;
    private final String suffix;
    private final Set<Path> given = new HashSet<>();

    /**
     * Targets.
     *
     * @param option as typed, for complaints
     * @param names what was typed after it
     * @param endings of the kinds that there are, with their points
     * @param suffix goes between the proof's name and the ending in a folder
     */
    Targets(String option, List<String> names, List<String> endings, String suffix) {
        this.option = option;
        this.names = names;
        this.endings = endings;
        this.suffix = suffix;
    }

    /** What is wrong with the words, if anything; told before any work is done. */
    Optional<String> wrong(List<Path> proofs) {
        for (String name : names) {
            if (!isPath(name)) {
                return Optional.of(option + " " + name + ": this is not a file name");
            }
            Path target = Path.of(name);
            String last = target.getFileName() == null ? "" : target.getFileName().toString();
            if (!isFile(name) && last.matches(".+\\..+") && !name.endsWith("/") && !Files.isDirectory(target)) {
                return Optional.of(option + " " + name + ": write a name that ends in " + String.join(" or ", endings) + ", or a folder");
            }
            if (isFile(name) && proofs.size() > 1) {
                return Optional.of(option + " " + name + ": there are several proofs; name a folder instead");
            }
            if (isFile(name) && proofs.stream().anyMatch(proof -> isSame(proof, target))) {
                return Optional.of(option + " " + name + ": that is the proof itself, which is never written over; choose another name");
            }
        }
        return Optional.empty();
    }

    /** False for what no file can be called here. */
    static boolean isPath(String name) {
        try {
            Path.of(name);
            return !name.isEmpty();
        } catch (InvalidPathException notAPath) {
            return false;
        }
    }

    private boolean isFile(String name) {
        return endings.stream().anyMatch(name.toLowerCase(Locale.ROOT)::endsWith) && !Files.isDirectory(Path.of(name));
    }

    private static boolean isSame(Path proof, Path target) {
        try {
            return Files.exists(target) && Files.isSameFile(proof, target);
        } catch (IOException unreadable) {
            return false; // reading the proof will say what is wrong with it
        }
    }

    /** The files to write for a proof. */
    List<Path> of(Path proof) {
        List<Path> files = new ArrayList<>();
        for (String name : names) {
            if (isFile(name)) {
                files.add(Path.of(name));
            } else {
                String bare = free(Path.of(name), proof.getFileName().toString().replaceFirst("\\.[^.]*$", ""));
                endings.forEach(ending -> files.add(Path.of(name).resolve(bare + ending)));
            }
        }
        return files;
    }

    /** Proofs of one name from several folders are numbered. */
    private String free(Path folder, String bare) {
        String name = bare + suffix;
        for (int i = 2; !given.add(folder.resolve(name)); i++) {
            name = bare + "-" + i + suffix;
        }
        return name;
    }
}
