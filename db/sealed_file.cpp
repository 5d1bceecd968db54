// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sealed_file.h"

#include "db/failure.h"

#include <QByteArray>
#include <QFile>

#include <algorithm>
#include <array>
#include <cerrno>
#include <memory>
#include <sodium.h>
#include <span>
#include <unistd.h>
#include <vector>

namespace quadrille::db
{

namespace
{

using Bytes = std::vector<unsigned char>;

constexpr std::array<char, 8> mark{'Q', 'D', 'R', 'L', 'S', 'E', 'A', 'L'};
constexpr std::uint64_t format = 1;
constexpr std::size_t numberSize = 8;
constexpr std::size_t keySize = crypto_secretstream_xchacha20poly1305_KEYBYTES;
constexpr std::size_t checkSize = crypto_generichash_BYTES;
constexpr std::size_t streamHeaderSize = crypto_secretstream_xchacha20poly1305_HEADERBYTES;
constexpr std::size_t headSize = mark.size() + 3 * numberSize + crypto_pwhash_SALTBYTES + checkSize;
constexpr std::size_t chunkSize = 64UL * 1024;
constexpr std::size_t sealedChunkSize = chunkSize + crypto_secretstream_xchacha20poly1305_ABYTES;
/// A head that asks for more is none of ours: it would only make the machine swap.
constexpr std::uint64_t mostMemory = 2ULL << 30U;
constexpr std::uint64_t mostPasses = 64;

[[noreturn]] void failWith(ErrorCode code, const QString& file, const std::string& detail)
{
    throw Failure({.code = code, .subject = file.toStdString(), .detail = detail});
}

void startSodium()
{
    if (sodium_init() < 0) {
        throw Failure({.code = ErrorCode::storeFailed,
                       .subject = {},
                       .detail = "the encryption library does not start"});
    }
}

void addNumber(Bytes& bytes, std::uint64_t number)
{
    for (std::size_t i = 0; i < numberSize; ++i) {
        bytes.push_back(static_cast<unsigned char>(number >> (8 * i)));
    }
}

std::uint64_t numberAt(std::span<const unsigned char> bytes, std::size_t place)
{
    std::uint64_t number = 0;
    for (std::size_t i = 0; i < numberSize; ++i) {
        number |= static_cast<std::uint64_t>(bytes[place + i]) << (8 * i);
    }
    return number;
}

/// What Argon2id makes of a passphrase; wiped when it goes.
class Secret
{
public:
    Secret(const std::string& passphrase, const unsigned char* salt, const SealCost& cost)
    {
        if (crypto_pwhash(m_bytes.data(), m_bytes.size(), passphrase.data(), passphrase.size(),
                          salt, cost.passes, static_cast<std::size_t>(cost.memory),
                          crypto_pwhash_ALG_ARGON2ID13) != 0) {
            throw Failure({.code = ErrorCode::storeFailed,
                           .subject = {},
                           .detail = "there is not enough memory to make a key"});
        }
    }
    ~Secret() { sodium_memzero(m_bytes.data(), m_bytes.size()); }
    Secret(const Secret&) = delete;
    Secret& operator=(const Secret&) = delete;

    const unsigned char* key() const { return m_bytes.data(); }
    std::array<unsigned char, checkSize> check() const
    {
        std::array<unsigned char, checkSize> digest{};
        crypto_generichash(digest.data(), digest.size(), m_bytes.data() + keySize, keySize, nullptr,
                           0);
        return digest;
    }

private:
    std::array<unsigned char, 2 * keySize> m_bytes{};
};

class Source
{
public:
    explicit Source(const QString& path)
        : m_file(path)
    {
        if (!m_file.open(QIODevice::ReadOnly)) {
            failWith(ErrorCode::cannotRead, path, m_file.errorString().toStdString());
        }
    }
    /// Up to `most` bytes; fewer only at the end.
    Bytes take(std::size_t most)
    {
        Bytes bytes(most);
        const qint64 count =
            m_file.read(reinterpret_cast<char*>(bytes.data()), static_cast<qint64>(most));
        if (count < 0) {
            failWith(ErrorCode::cannotRead, m_file.fileName(), m_file.errorString().toStdString());
        }
        bytes.resize(static_cast<std::size_t>(count));
        return bytes;
    }
    bool isAtEnd() const { return m_file.atEnd(); }

private:
    QFile m_file;
};

class Target
{
public:
    explicit Target(const QString& path)
        : m_file(path)
    {
        if (!m_file.open(QIODevice::WriteOnly | QIODevice::Unbuffered)) {
            failWith(ErrorCode::cannotWrite, path, m_file.errorString().toStdString());
        }
    }
    void put(const Bytes& bytes)
    {
        const auto size = static_cast<qint64>(bytes.size());
        if (m_file.write(reinterpret_cast<const char*>(bytes.data()), size) != size) {
            fail();
        }
    }
    void finish()
    {
        if (::fsync(m_file.handle()) != 0) {
            fail();
        }
    }

private:
    [[noreturn]] void fail() const
    {
        failWith(errno == ENOSPC || errno == EFBIG ? ErrorCode::diskFull : ErrorCode::cannotWrite,
                 m_file.fileName(), m_file.errorString().toStdString());
    }
    QFile m_file;
};

/// The state holds the key; it is wiped however its function ends.
struct WipedStream {
    crypto_secretstream_xchacha20poly1305_state state{};
    WipedStream() = default;
    ~WipedStream() { sodium_memzero(&state, sizeof(state)); }
    WipedStream(const WipedStream&) = delete;
    WipedStream& operator=(const WipedStream&) = delete;
};

} // namespace

SealCost usualSealCost()
{
    return {crypto_pwhash_OPSLIMIT_MODERATE, crypto_pwhash_MEMLIMIT_MODERATE};
}

SealCost leastSealCost()
{
    return {crypto_pwhash_OPSLIMIT_MIN, crypto_pwhash_MEMLIMIT_MIN};
}

bool isSealed(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        return false;
    }
    const QByteArray start = file.read(static_cast<qint64>(mark.size()));
    return start == QByteArrayView(mark.data(), static_cast<qsizetype>(mark.size()));
}

void sealFile(const QString& from, const QString& to, const std::string& passphrase,
              const SealCost& cost)
{
    startSodium();
    Source source(from);
    Target target(to);
    Bytes head(mark.begin(), mark.end());
    addNumber(head, format);
    addNumber(head, cost.passes);
    addNumber(head, cost.memory);
    std::array<unsigned char, crypto_pwhash_SALTBYTES> salt{};
    randombytes_buf(salt.data(), salt.size());
    head.insert(head.end(), salt.begin(), salt.end());
    const Secret secret(passphrase, salt.data(), cost);
    const auto check = secret.check();
    head.insert(head.end(), check.begin(), check.end());
    WipedStream wiped;
    auto& stream = wiped.state;
    Bytes header(streamHeaderSize);
    crypto_secretstream_xchacha20poly1305_init_push(&stream, header.data(), secret.key());
    target.put(head);
    target.put(header);
    bool isFirst = true;
    bool isLast = false;
    while (!isLast) {
        const Bytes plain = source.take(chunkSize);
        isLast = source.isAtEnd();
        Bytes sealed(plain.size() + crypto_secretstream_xchacha20poly1305_ABYTES);
        crypto_secretstream_xchacha20poly1305_push(
            &stream, sealed.data(), nullptr, plain.data(), plain.size(),
            isFirst ? head.data() : nullptr, isFirst ? head.size() : 0,
            isLast ? crypto_secretstream_xchacha20poly1305_TAG_FINAL : 0);
        target.put(sealed);
        isFirst = false;
    }
    target.finish();
}

namespace
{

struct Head {
    Bytes bytes;
    SealCost cost{};
    const unsigned char* salt() const { return bytes.data() + mark.size() + 3 * numberSize; }
    const unsigned char* check() const { return salt() + crypto_pwhash_SALTBYTES; }
};

Head takeHead(Source& source, const QString& file)
{
    Head head;
    head.bytes = source.take(headSize);
    const bool whole =
        head.bytes.size() == headSize && std::equal(mark.begin(), mark.end(), head.bytes.begin());
    if (!whole || numberAt(head.bytes, mark.size()) != format) {
        failWith(ErrorCode::backupDamaged, file, "its beginning is not that of a sealed backup");
    }
    head.cost = {numberAt(head.bytes, mark.size() + numberSize),
                 numberAt(head.bytes, mark.size() + 2 * numberSize)};
    if (head.cost.memory > mostMemory || head.cost.passes > mostPasses ||
        head.cost.memory < crypto_pwhash_MEMLIMIT_MIN ||
        head.cost.passes < crypto_pwhash_OPSLIMIT_MIN) {
        failWith(ErrorCode::backupDamaged, file, "its beginning asks for the impossible");
    }
    return head;
}

} // namespace

void unsealFile(const QString& from, const QString& to, const std::string& passphrase)
{
    startSodium();
    Source source(from);
    const Head head = takeHead(source, from);
    const Secret secret(passphrase, head.salt(), head.cost);
    if (sodium_memcmp(secret.check().data(), head.check(), checkSize) != 0) {
        failWith(ErrorCode::wrongPassphrase, from, {});
    }
    const Bytes header = source.take(streamHeaderSize);
    WipedStream wiped;
    auto& stream = wiped.state;
    if (header.size() != streamHeaderSize || crypto_secretstream_xchacha20poly1305_init_pull(
                                                 &stream, header.data(), secret.key()) != 0) {
        failWith(ErrorCode::backupDamaged, from, "it is cut off");
    }
    Target target(to);
    bool isFirst = true;
    unsigned char tag = 0;
    while (tag != crypto_secretstream_xchacha20poly1305_TAG_FINAL) {
        const Bytes sealed = source.take(sealedChunkSize);
        if (sealed.size() < crypto_secretstream_xchacha20poly1305_ABYTES) {
            failWith(ErrorCode::backupDamaged, from, "it is cut off");
        }
        Bytes plain(sealed.size() - crypto_secretstream_xchacha20poly1305_ABYTES);
        if (crypto_secretstream_xchacha20poly1305_pull(
                &stream, plain.data(), nullptr, &tag, sealed.data(), sealed.size(),
                isFirst ? head.bytes.data() : nullptr, isFirst ? head.bytes.size() : 0) != 0) {
            failWith(ErrorCode::backupDamaged, from, "it is altered or cut off");
        }
        target.put(plain);
        isFirst = false;
    }
    if (!source.isAtEnd()) {
        failWith(ErrorCode::backupDamaged, from, "something was added behind its end");
    }
    target.finish();
}

} // namespace quadrille::db
