#include <cerrno>
#include <system_error>

#include <pelage/data/disk_reason.hpp>

namespace pelage::io {

std::string disk_reason(int number) {
    switch (number) {
        case ENOENT:
        case ENOTDIR:
            return "there is no such folder";
        case EACCES:
        case EPERM:
            return "it isn't allowed there";
        case ENOSPC:
        case EDQUOT:
            return "there is no room left";
        case EROFS:
            return "the disk is read-only";
        case ELOOP:
            return "it is a link, and a file of its own is wanted";
        case EISDIR:
            return "it is a folder";
        case ENXIO:
            return "it is no ordinary file";
        case ENAMETOOLONG:
            return "the name is too long";
        default:
            return std::generic_category().message(number);
    }
}

}  // namespace pelage::io
